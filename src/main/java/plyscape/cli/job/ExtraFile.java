package plyscape.cli.job;

/** Files that {@code plan} writes only when asked to. */
enum ExtraFile {
  /** The layers as GeoJSON beside the SVG ones. */
  GEOJSON,
  /** The layers as DXF (R12) beside the SVG ones. */
  DXF,
  /** {@code sheet.svg}: all layers on one sheet with registration marks and a scale bar. */
  SHEET,
  /** {@code block.png}: the panel seen from the south-west, with the stripes on its walls. */
  BLOCK,
  /** {@code risk.png}: the map of the risk of a wrong colour. */
  RISK
}
