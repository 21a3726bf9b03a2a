package plyscape.layup;

import java.util.stream.Collectors;
import plyscape.fault.JobFault;
import plyscape.text.Template;

/** Whether enough wood is left under the deepest cut. */
public final class FloorCheck {

  private FloorCheck() {}

  /**
   * Checks the floor under the deepest ply that something is assigned to, on a panel that is the
   * same everywhere.
   *
   * @throws JobFault if less than {@link CutAllowance#minimumFloorMm()} would be left
   */
  public static void require(Depths depths, int deepestPly, CutAllowance allowance) {
    if (!holds(depths, deepestPly, allowance)) {
      double target = depths.of(deepestPly).targetMm();
      LeastFloor floor = new LeastFloor(depths.floorMm(deepestPly), null, target);
      throw fault(depths, deepestPly, floor, allowance);
    }
  }

  /**
   * Checks the floor of one place.
   *
   * @throws JobFault that names it, if less would be left there
   */
  public static void require(Depths depths, int ply, LeastFloor floor, CutAllowance allowance) {
    if (floor.floorMm() < allowance.minimumFloorMm() - 1e-9) {
      throw fault(depths, ply, floor, allowance);
    }
  }

  private static JobFault fault(Depths depths, int ply, LeastFloor floor, CutAllowance allowance) {
    double panel = depths.thicknessMm();
    String where =
        floor.at() == null
            ? ""
            : Template.fill(
                " at %s, where the panel is %.3f mm thick,",
                floor.at(), depths.thicknessMm(floor.at()));
    return new JobFault(
        Template.fill(
            "ply %d (%s) is cut to %.3f mm%s and leaves %.3f mm of wood under it, less than"
                + " minimum_floor %.3f mm",
            ply,
            depths.of(ply).ply().name(),
            floor.cutMm(),
            where,
            floor.floorMm(),
            allowance.minimumFloorMm()),
        Template.fill(
                "leave it out of terrain.plies (%s) and the zones, glue %.2f mm or more under it,"
                    + " or lower minimum_floor",
                pliesOption(depths, floor.at(), allowance),
                allowance.minimumFloorMm() - floor.floorMm())
            + (panel < allowance.minimumFloorMm()
                ? Template.fill(
                    "; all %d plies together are only %.2f mm thick: thicknesses are in mm, 25.4 to"
                        + " the inch",
                    depths.plies(), panel)
                : ""));
  }

  /** Whether enough wood is left under a ply anywhere on a panel of that size, mm. */
  public static boolean holds(
      Depths depths, int ply, CutAllowance allowance, double widthMm, double heightMm) {
    PanelPoint thinnest =
        depths.byPlace() ? PanelCorners.of(depths, ply, widthMm, heightMm).leastFloor().at() : null;
    return holds(depths, ply, thinnest, allowance);
  }

  /** Whether enough wood is left under a ply that is cut to its depth at the panel's centre. */
  public static boolean holds(Depths depths, int ply, CutAllowance allowance) {
    return depths.floorMm(ply) >= allowance.minimumFloorMm() - 1e-9;
  }

  private static boolean holds(Depths depths, int ply, PanelPoint at, CutAllowance allowance) {
    return at == null
        ? holds(depths, ply, allowance)
        : depths.thicknessMm(at) - depths.of(ply, at).targetMm()
            >= allowance.minimumFloorMm() - 1e-9;
  }

  /** The option that leaves out all plies that are too near to the panel's bottom at a place. */
  private static String pliesOption(Depths depths, PanelPoint at, CutAllowance allowance) {
    String names =
        depths.stream()
            .filter(d -> holds(depths, d.ply().number(), at, allowance))
            .map(d -> d.ply().name())
            .collect(Collectors.joining(","));
    boolean plain = names.matches("[A-Za-z0-9,_-]+");
    boolean brief = !names.isEmpty() && names.length() < 200 && !names.contains("\"");
    return !brief ? "--plies" : "--plies " + (plain ? names : "\"" + names + "\"");
  }
}
