package plyscape.layup;

import java.util.Locale;
import java.util.stream.Collectors;
import plyscape.fault.JobFault;

/** Whether enough wood is left under the deepest cut. */
public final class FloorCheck {

  private FloorCheck() {}

  /**
   * Checks the floor under the deepest ply that something is assigned to.
   *
   * @throws JobFault if less than {@link CutAllowance#minimumFloorMm()} would be left
   */
  public static void require(Depths depths, int deepestPly, CutAllowance allowance) {
    double floor = depths.floorMm(deepestPly);
    if (!holds(depths, deepestPly, allowance)) {
      PlyDepth deepest = depths.of(deepestPly);
      double panel = depths.thicknessMm();
      throw new JobFault(
          format(
              "ply %d (%s) is cut to %.3f mm and leaves %.3f mm of wood under it, less than"
                  + " minimum_floor %.3f mm",
              deepestPly,
              deepest.ply().name(),
              deepest.targetMm(),
              floor,
              allowance.minimumFloorMm()),
          format(
                  "leave it out of terrain.plies (%s) and the zones, glue %.2f mm or more under it,"
                      + " or lower minimum_floor",
                  pliesOption(depths, allowance), allowance.minimumFloorMm() - floor)
              + (panel < allowance.minimumFloorMm()
                  ? format(
                      "; all %d plies together are only %.2f mm thick: thicknesses are in mm, 25.4"
                          + " to the inch",
                      depths.plies(), panel)
                  : ""));
    }
  }

  /** Whether enough wood is left under a ply that is cut to its depth. */
  public static boolean holds(Depths depths, int ply, CutAllowance allowance) {
    return depths.floorMm(ply) >= allowance.minimumFloorMm() - 1e-9;
  }

  /** The option that leaves out all plies that are too near to the panel's bottom. */
  private static String pliesOption(Depths depths, CutAllowance allowance) {
    String names =
        depths.stream()
            .filter(d -> holds(depths, d.ply().number(), allowance))
            .map(d -> d.ply().name())
            .collect(Collectors.joining(","));
    boolean plain = names.matches("[A-Za-z0-9,_-]+");
    boolean brief = !names.isEmpty() && names.length() < 200 && !names.contains("\"");
    return !brief ? "--plies" : "--plies " + (plain ? names : "\"" + names + "\"");
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
