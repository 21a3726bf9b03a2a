package plyscape.toolpath.face;

import plyscape.machine.Tool;
import plyscape.toolpath.task.ToolRun;

/**
 * A panel whose top falls evenly along X, cut by the same cutters along the same runs.
 *
 * @param slope mm a mm; 0 for one that lies flat
 */
record SlopingFit(double slope) implements PanelFit {

  private static final double RADIUS_MM = 1.5;

  @Override
  public double belowMm(double x, double y, double flatMm) {
    return flatMm + slope * x;
  }

  @Override
  public double rimMm() {
    return slope * RADIUS_MM;
  }

  @Override
  public double flatnessMm() {
    return slope == 0 ? 0 : 0.05;
  }

  @Override
  public Tool listed(Tool planned) {
    return planned;
  }

  @Override
  public ToolRun cut(ToolRun flat) {
    return flat;
  }
}
