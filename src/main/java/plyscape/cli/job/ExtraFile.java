package plyscape.cli.job;

import plyscape.files.PlanFiles;

/** Files that {@code plan} writes only when asked to. */
enum ExtraFile {
  /** The layers as GeoJSON beside the SVG ones. */
  GEOJSON(PlanFiles.layer("*.geojson")),
  /** The layers as DXF (R12) beside the SVG ones. */
  DXF(PlanFiles.layer("*.dxf")),
  /** {@code sheet.svg}: all layers on one sheet with registration marks and a scale bar. */
  SHEET(PlanFiles.SHEET),
  /** {@code block.png}: the panel seen from the south-west, with the stripes on its walls. */
  BLOCK(PlanFiles.BLOCK),
  /** {@code risk.png}: the map of the risk of a wrong colour. */
  RISK(PlanFiles.RISK);

  private final String fileName;

  ExtraFile(String fileName) {
    this.fileName = fileName;
  }

  /** Its name in the output, with a star for each layer's. */
  String fileName() {
    return fileName;
  }
}
