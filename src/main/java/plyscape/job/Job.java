package plyscape.job;

import java.util.List;
import plyscape.layup.CutAllowance;
import plyscape.layup.Layup;
import plyscape.machine.Machine;
import plyscape.machine.Tool;

/**
 * One checked job: everything the user set, with defaults filled in. Names in it resolve; numbers are in range. Immutable.
 *
 * @param name the job file's name, or the terrain's when there is no job file
 * @param layup the layup as read
 * @param terrain which terrain and how it is taken
 * @param panel the panel's size
 * @param zones later over earlier
 * @param tools as listed, at least one
 * @param machine the router
 * @param allowance clearance, sanding, top and floor
 * @param minimumAreaMm2 regions smaller than this are given to a neighbour
 */
public record Job(
    String name,
    Layup layup,
    TerrainSpec terrain,
    PanelSpec panel,
    List<ZoneSpec> zones,
    List<Tool> tools,
    Machine machine,
    CutAllowance allowance,
    double minimumAreaMm2) {

  /**
   * The panel.
   *
   * @param widthMm X size
   * @param heightMm Y size
   * @param borderMm uncut margin on each side, at least
   */
  public record PanelSpec(double widthMm, double heightMm, double borderMm) {}
}
