package plyscape.plan;

import java.util.ArrayList;
import java.util.List;
import plyscape.bands.Bands;
import plyscape.fault.Warning;
import plyscape.files.PlanFiles;
import plyscape.job.Job;
import plyscape.layup.Depths;
import plyscape.layup.FaceWindow;
import plyscape.region.FaceField;
import plyscape.region.Tiling;
import plyscape.simulate.Verification;
import plyscape.terrain.Terrain;
import plyscape.zones.Zone;

/**
 * A finished plan: everything that is drawn, reported and written. Immutable.
 *
 * @param job what was asked
 * @param depths every ply of the layup, top to bottom
 * @param thicknessMm of the pressed panel
 * @param terrain the ground over the carved area
 * @param bands elevations to plies
 * @param zones zones on the panel
 * @param tiling regions and pockets
 * @param programs one a used tool, in cutting order; empty for a preview
 * @param time totals; null for a preview
 * @param verification outcome of the simulation; null for a preview
 * @param warnings all, in the order they arose
 * @param version of plyscape
 * @param tiles the panels that it is cut on, each a plan of its own; empty when this is the plan of
 *     one panel, and for a preview. Otherwise this plan is the whole landscape's, without programs,
 *     its times the sums
 * @param faces depths inside the regions when the surface is sculpted; null when every region is
 *     one flat terrace
 */
public record Plan(
    Job job,
    Depths depths,
    double thicknessMm,
    Terrain terrain,
    Bands bands,
    List<Zone> zones,
    Tiling tiling,
    List<ToolProgram> programs,
    PlanTime time,
    Verification verification,
    List<Warning> warnings,
    String version,
    List<Tile> tiles,
    FaceField faces) {

  /**
   * One of several panels.
   *
   * @param column from 1 at the left
   * @param row from 1 at the bottom
   * @param plan of this panel, in its own coordinates
   */
  public record Tile(int column, int row, Plan plan) {

    /** Name of the panel and of its directory, such as {@code tile-1-2}. */
    public String name() {
      return PlanFiles.tile(column, row);
    }
  }

  /** The plan of one panel. */
  public Plan(
      Job job,
      Depths depths,
      double thicknessMm,
      Terrain terrain,
      Bands bands,
      List<Zone> zones,
      Tiling tiling,
      List<ToolProgram> programs,
      PlanTime time,
      Verification verification,
      List<Warning> warnings,
      String version) {
    this(
        job,
        depths,
        thicknessMm,
        terrain,
        bands,
        zones,
        tiling,
        programs,
        time,
        verification,
        warnings,
        version,
        List.of(),
        null);
  }

  /**
   * Shallowest and deepest cut of a ply's faces, mm: both its target unless they follow the
   * terrain.
   */
  public FaceWindow cutMm(int plyNumber) {
    FaceWindow range = faces == null ? null : faces.rangeMm(plyNumber);
    double target = depths.of(plyNumber).targetMm();
    return range == null ? new FaceWindow(target, target) : range;
  }

  /** Deepest cut of all, mm. */
  public double deepestCutMm() {
    return cutMm(tiling.exposed().lastKey()).lowerMm();
  }

  /** The same with faces that follow the terrain. */
  Plan withFaces(FaceField field) {
    return with(depths, warnings, field);
  }

  /** The same with other risks. */
  Plan withDepths(Depths other) {
    return with(other, warnings, faces);
  }

  /** The same with these warnings. */
  Plan warned(List<Warning> all) {
    return with(depths, List.copyOf(all), faces);
  }

  /** The same with more warnings. */
  Plan warnedOf(List<Warning> more) {
    List<Warning> all = new ArrayList<>(warnings);
    all.addAll(more);
    return warned(all);
  }

  private Plan with(Depths otherDepths, List<Warning> otherWarnings, FaceField field) {
    return new Plan(
        job,
        otherDepths,
        thicknessMm,
        terrain,
        bands,
        zones,
        tiling,
        programs,
        time,
        verification,
        otherWarnings,
        version,
        tiles,
        field);
  }
}
