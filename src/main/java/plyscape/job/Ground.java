package plyscape.job;

/** A terrain on a panel and the shop, without a layup. Immutable. */
public record Ground(TerrainSpec terrain, Job.PanelSpec panel, Bench bench) {}
