package plyscape.layup;

import java.util.ArrayList;
import java.util.List;
import plyscape.fault.InputFault;
import plyscape.layup.statistics.ColourRisk;

/**
 * Depths, tolerances, clearances, target depths and risks of a layup's plies: sections 3 and 11 of
 * src/contract.md.
 */
public final class DepthModel {

  private final PressedPanel pressed;
  private final Layup layup;
  private final CutAllowance allowance;

  private DepthModel(PressedPanel pressed, Layup layup, CutAllowance allowance) {
    this.pressed = pressed;
    this.layup = layup;
    this.allowance = allowance;
  }

  /**
   * Where each ply lies and how it is cut.
   *
   * @param acceptThickness believe what was measured however far it is from nominal
   * @throws InputFault if measured depths contradict each other, are out of order or out of
   *     0.85..1.10 of nominal
   */
  public static Depths depths(Layup layup, CutAllowance allowance, boolean acceptThickness) {
    return depths(PressedPanel.of(layup, acceptThickness), layup, allowance);
  }

  /** The same for a layup that is only thought of: nothing is checked. */
  public static Depths unchecked(Layup layup, CutAllowance allowance) {
    return depths(PressedPanel.unchecked(layup), layup, allowance);
  }

  private static Depths depths(PressedPanel pressed, Layup layup, CutAllowance allowance) {
    DepthModel model = new DepthModel(pressed, layup, allowance);
    List<PlyDepth> depths = new ArrayList<>();
    for (Ply ply : layup.plies()) {
      depths.add(model.depth(ply, model.pressed.centre()));
    }
    return new Depths(depths, model);
  }

  /** Thickness of the pressed panel at its centre, mm: as estimated from all that was measured. */
  public static double thicknessMm(Layup layup) {
    return PressedPanel.of(layup, true).depthMm(LayerStack.bottomOf(layup.plies().size()));
  }

  /** Thickness of the pressed panel at a place, mm. */
  double thicknessMm(PanelPoint at) {
    return pressed.depthMm(LayerStack.bottomOf(plies()), at);
  }

  /** Nominal thickness of the panel, mm: plies and glue lines as listed, whatever was measured. */
  public static double nominalThicknessMm(Layup layup) {
    LayerStack stack = LayerStack.of(layup);
    return stack.totalMm(0, stack.layers());
  }

  /** Whether depths differ from place to place. */
  boolean byPlace() {
    return layup.measured().byPlace();
  }

  /** Whether the press may have bowed it: depths then don't fall evenly. */
  boolean bows() {
    return layup.measured().press().bowTolerance() > 0;
  }

  /** The layup's plies. */
  int plies() {
    return layup.plies().size();
  }

  /** One of them. */
  Ply ply(int number) {
    return layup.ply(number);
  }

  /** What the cut adds. */
  CutAllowance allowance() {
    return allowance;
  }

  /** Plus or minus, how far the panel is from flat. */
  double flatnessMm() {
    return layup.flatnessMm();
  }

  /** Panels to be drawn at random, with the readings that this one has. */
  PanelDraw draw() {
    return new PanelDraw(pressed);
  }

  /** Whether a ply is left uncut. */
  boolean left(int plyNumber) {
    return left(ply(plyNumber));
  }

  /** The panel's centre. */
  PanelPoint centre() {
    return pressed.centre();
  }

  /** A ply at a place, its face sanded. */
  PlyDepth depth(Ply ply, PanelPoint at) {
    double top = pressed.depthMm(LayerStack.topOf(ply.number()), at);
    double bottom = pressed.depthMm(LayerStack.bottomOf(ply.number()), at);
    double target = left(ply) ? 0 : Math.max(0, (top + bottom) / 2 - allowance.sandingMm());
    double topTolerance = tolerance(ply, at, true, allowance.method());
    double bottomTolerance = tolerance(ply, at, false, allowance.method());
    return new PlyDepth(
        ply,
        new Boundary(top, topTolerance, needed(topTolerance, true)),
        new Boundary(bottom, bottomTolerance, needed(bottomTolerance, true)),
        target,
        risk(ply, at, target, true));
  }

  /**
   * Whether a face is sure of its ply at a place even where sanding doesn't reach: judged as it is
   * cut, above the middle of its ply.
   */
  boolean reliableUnsanded(PlyDepth sanded) {
    double face = sanded.targetMm();
    return left(sanded.ply())
        || (face - sanded.topMm() >= needed(sanded.topToleranceMm(), false) - 1e-9
            && sanded.bottomMm() - face >= needed(sanded.bottomToleranceMm(), false) - 1e-9);
  }

  /**
   * Probability that a face of a ply isn't inside it.
   *
   * @param cutMm depth to which it is cut there
   * @param sanded whether sanding reaches it
   */
  double risk(Ply ply, PanelPoint at, double cutMm, boolean sanded) {
    if (left(ply)) {
      return 0;
    }
    double face = cutMm + (sanded ? allowance.sandingMm() : 0);
    double[] cut = cut(sanded);
    return ColourRisk.of(
        face - pressed.depthMm(LayerStack.topOf(ply.number()), at),
        combine(Method.RSS, tolerance(ply, at, true, Method.RSS), cut),
        pressed.depthMm(LayerStack.bottomOf(ply.number()), at) - face,
        combine(Method.RSS, tolerance(ply, at, false, Method.RSS), cut));
  }

  private boolean left(Ply ply) {
    return ply.number() == 1 && allowance.top() == Top.LEAVE;
  }

  private double tolerance(Ply ply, PanelPoint at, boolean top, Method method) {
    return pressed.toleranceMm(
        top ? LayerStack.topOf(ply.number()) : LayerStack.bottomOf(ply.number()), at, method);
  }

  private double needed(double boundary, boolean sanded) {
    return Math.max(allowance.minimumMm(), combine(allowance.method(), boundary, cut(sanded)));
  }

  /** The cut's own errors, plus or minus. */
  private double[] cut(boolean sanded) {
    return new double[] {
      layup.flatnessMm(), allowance.zErrorMm(), sanded ? allowance.sandingToleranceMm() : 0
    };
  }

  /** One tolerance and some more, added by the method. */
  static double combine(Method method, double first, double... more) {
    double sum = method == Method.RSS ? first * first : first;
    for (double u : more) {
      sum += method == Method.RSS ? u * u : u;
    }
    return method == Method.RSS ? Math.sqrt(sum) : sum;
  }
}
