package plyscape.toolpath.face;

import plyscape.machine.Tool;
import plyscape.toolpath.task.ToolRun;

/** How the flat plan is cut into a panel as it lies. Lengths in mm, depths positive down. */
public interface PanelFit {

  /** Depth below the top face of a flat panel that a depth of the flat plan means at a place. */
  double belowMm(double x, double y, double flatMm);

  /**
   * How far a flat cutter's rim may lie off the depth at its axis, as the panel slopes under it; 0
   * on one that doesn't.
   */
  double rimMm();

  /** Plus or minus, of the top face: rapids keep farther off it. */
  double flatnessMm();

  /** The job's cutter that stands behind one of the flat plan, with its full stepdown. */
  Tool listed(Tool planned);

  /** A run of the flat plan as it is cut. */
  ToolRun cut(ToolRun flat);
}
