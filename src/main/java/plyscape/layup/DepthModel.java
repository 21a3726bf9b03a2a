package plyscape.layup;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import plyscape.fault.InputFault;
import plyscape.fault.JobFault;
import plyscape.fault.Place;

/**
 * Depths, tolerances, clearances, target depths and risks of a layup's plies: section 3 of the
 * contract.
 */
public final class DepthModel {

  /**
   * Least and greatest measured over nominal thickness that is believed: beyond, a ply was
   * miscounted or mismeasured.
   */
  private static final double LEAST_FACTOR = 0.85;

  private static final double GREATEST_FACTOR = 1.10;

  private DepthModel() {}

  /**
   * Where each ply lies and how it is cut, top to bottom.
   *
   * @param acceptThickness believe the measured thickness however far it is from nominal
   * @throws InputFault if measured depths are out of order, or the measured thickness is out of
   *     0.85..1.10 of nominal
   */
  public static Depths depths(Layup layup, CutAllowance allowance, boolean acceptThickness) {
    if (!acceptThickness) {
      requireBelievable(layup);
    }
    PressedDepths pressed = new PressedDepths(layup);
    List<PlyDepth> depths = new ArrayList<>();
    for (Ply ply : layup.plies()) {
      depths.add(depth(pressed, ply, layup.flatnessMm(), allowance));
    }
    return new Depths(depths);
  }

  /**
   * The same depths with each risk taken where it is worst when the face may lie anywhere in its
   * ply's window: at the window's upper or lower end.
   *
   * @param windows one a ply; null where no face is, and closed where all faces are at the target
   */
  public static Depths worstIn(
      Depths depths, List<FaceWindow> windows, Layup layup, CutAllowance allowance) {
    PressedDepths pressed = new PressedDepths(layup);
    List<PlyDepth> out = new ArrayList<>();
    for (int i = 0; i < depths.plies(); i++) {
      PlyDepth depth = depths.of(i + 1);
      FaceWindow window = windows.get(i);
      if (window == null || !window.open()) {
        out.add(depth);
        continue;
      }
      double sanding = allowance.sandingMm();
      double[] cut = {layup.flatnessMm(), allowance.zErrorMm(), allowance.sandingToleranceMm()};
      out.add(
          depth.withRisk(
              Math.max(
                  risk(pressed, depth, window.upperMm() + sanding, cut),
                  risk(pressed, depth, window.lowerMm() + sanding, cut))));
    }
    return new Depths(out);
  }

  private static double risk(PressedDepths pressed, PlyDepth depth, double face, double[] cut) {
    int number = depth.ply().number();
    double above = pressed.toleranceMm(LayerStack.topOf(number), Method.RSS);
    double below = pressed.toleranceMm(LayerStack.bottomOf(number), Method.RSS);
    return ColourRisk.of(
        face - depth.topMm(),
        combine(Method.RSS, above, cut),
        depth.bottomMm() - face,
        combine(Method.RSS, below, cut));
  }

  /** Thickness of the pressed panel, mm: measured if it was, else as worked out. */
  public static double thicknessMm(Layup layup) {
    return new PressedDepths(layup).depthMm(2 * layup.plies().size() - 1);
  }

  /** Nominal thickness of the panel, mm: plies and glue lines as listed, whatever was measured. */
  public static double nominalThicknessMm(Layup layup) {
    LayerStack stack = LayerStack.of(layup);
    return stack.totalMm(0, stack.layers());
  }

  /**
   * Checks the floor under the deepest ply that something is assigned to.
   *
   * @throws JobFault if less than {@link CutAllowance#minimumFloorMm()} would be left
   */
  public static void requireFloor(Depths depths, int deepestPly, CutAllowance allowance) {
    double floor = depths.floorMm(deepestPly);
    if (floor < allowance.minimumFloorMm() - 1e-9) {
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

  /** The option that leaves out all plies that are too near to the panel's bottom. */
  private static String pliesOption(Depths depths, CutAllowance allowance) {
    String names =
        depths.stream()
            .filter(d -> depths.floorMm(d.ply().number()) >= allowance.minimumFloorMm() - 1e-9)
            .map(d -> d.ply().name())
            .collect(Collectors.joining(","));
    boolean plain = names.matches("[A-Za-z0-9,_-]+");
    boolean brief = !names.isEmpty() && names.length() < 200 && !names.contains("\"");
    return !brief ? "--plies" : "--plies " + (plain ? names : "\"" + names + "\"");
  }

  private static PlyDepth depth(
      PressedDepths pressed, Ply ply, double flatnessMm, CutAllowance allowance) {
    int topFace = LayerStack.topOf(ply.number());
    int bottomFace = LayerStack.bottomOf(ply.number());
    double top = pressed.depthMm(topFace);
    double bottom = pressed.depthMm(bottomFace);
    boolean left = ply.number() == 1 && allowance.top() == Top.LEAVE;
    double target = left ? 0 : Math.max(0, (top + bottom) / 2 - allowance.sandingMm());
    double face = target + allowance.sandingMm();
    double topTolerance = pressed.toleranceMm(topFace, allowance.method());
    double bottomTolerance = pressed.toleranceMm(bottomFace, allowance.method());
    double[] cut = {flatnessMm, allowance.zErrorMm(), allowance.sandingToleranceMm()};
    double risk =
        left
            ? 0
            : ColourRisk.of(
                face - top,
                combine(Method.RSS, pressed.toleranceMm(topFace, Method.RSS), cut),
                bottom - face,
                combine(Method.RSS, pressed.toleranceMm(bottomFace, Method.RSS), cut));
    return new PlyDepth(
        ply,
        top,
        bottom,
        topTolerance,
        bottomTolerance,
        target,
        Math.max(allowance.minimumMm(), combine(allowance.method(), topTolerance, cut)),
        Math.max(allowance.minimumMm(), combine(allowance.method(), bottomTolerance, cut)),
        risk);
  }

  /** One tolerance and some more, added by the method. */
  static double combine(Method method, double first, double... more) {
    double sum = method == Method.RSS ? first * first : first;
    for (double u : more) {
      sum += method == Method.RSS ? u * u : u;
    }
    return method == Method.RSS ? Math.sqrt(sum) : sum;
  }

  private static void requireBelievable(Layup layup) {
    if (layup.measured().thicknessMm() == null) {
      return;
    }
    double nominal = nominalThicknessMm(layup);
    double factor = layup.measured().thicknessMm() / nominal;
    if (!(factor >= LEAST_FACTOR - 1e-12 && factor <= GREATEST_FACTOR + 1e-12)) {
      throw new InputFault(
          new Place(layup.file(), 0, 0, "measured_thickness"),
          format(
              "%.3f mm measured, but plies and glue lines add up to %.3f mm: %.3f times",
              layup.measured().thicknessMm(), nominal, factor),
          "0.85 to 1.10 times is believed: mend the plies or the measurement, or give"
              + " --accept-thickness");
    }
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
