package plyscape.report.json;

import java.util.List;
import plyscape.grid.Grid;

/**
 * What {@code verify} needs of {@code faces.json} and its relief. Immutable.
 *
 * @param cuspMm height of ridges that finishing may leave
 * @param relief elevations on the panel
 * @param faces by ply, in the order of the polygons of its layer
 */
public record FaceFigures(double cuspMm, Grid relief, List<FaceFigure> faces) {

  /** One region's face and how many outlines of its layer are its. */
  public record FaceFigure(
      int ply, int rings, double highM, double lowM, double upperMm, double lowerMm) {}
}
