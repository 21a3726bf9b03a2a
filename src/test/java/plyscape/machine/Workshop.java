package plyscape.machine;

/**
 * The machine and the cutters that tests work with. The figures stand here as numbers, not as the
 * program's defaults, so that a changed default shows as a failing test.
 */
public final class Workshop {

  /** A small router, X0 Y0 at the panel's lower left corner, Z0 at its top face. */
  public static final Machine ROUTER = router(Machine.Zero.LOWER_LEFT, Machine.ZeroZ.TOP);

  /** Three millimetres across. */
  public static final Tool END_MILL_3 = endMill(3, 12);

  private Workshop() {}

  /** A machine whose spindle is at its speed at once, for programs written by hand. */
  public static Machine withoutSpinUp(Machine machine) {
    SettingUp set = machine.settingUp();
    return machine.with(
        new SettingUp(set.zero(), set.zeroZ(), set.safeHeightMm(), set.toolChangeS(), 0));
  }

  /** The router with its zero elsewhere. */
  public static Machine router(Machine.Zero zero, Machine.ZeroZ zeroZ) {
    return new Machine(
        new Travel(300, 300, 80),
        new Motion(4000, 300, 0.02, 0.03),
        new SettingUp(zero, zeroZ, 4, 60, 5),
        new CutRules(0.5, true, 5, 0, 0.02));
  }

  /** A flat cutter named by its diameter, run as the usual one is. */
  public static Tool endMill(double diameterMm, double fluteLengthMm) {
    String name =
        "end mill " + (diameterMm == (int) diameterMm ? "" + (int) diameterMm : "" + diameterMm);
    return cutter(name, Tool.Shape.FLAT, diameterMm, fluteLengthMm);
  }

  /** A cutter with straight sides, run as the usual one is. */
  public static Tool cutter(
      String name, Tool.Shape shape, double diameterMm, double fluteLengthMm) {
    return new Tool(name, Form.of(shape, diameterMm, fluteLengthMm), cutting(1800, 500, 2, 0.45));
  }

  /** Feeds (mm/min), stepdown (mm) and stepover (share of the diameter) at 16000 turns a minute. */
  public static CuttingData cutting(double feed, double plunge, double stepdown, double stepover) {
    return new CuttingData(16_000, feed, plunge, stepdown, stepover);
  }

  /** The form of a tapered cutter. */
  public static Form tapered(
      double diameterMm, double fluteLengthMm, double tipDiameterMm, double taperDegrees) {
    return new Form(
        Tool.Shape.TAPERED,
        diameterMm,
        fluteLengthMm,
        2,
        tipDiameterMm,
        taperDegrees,
        Tool.Spiral.UNSAID);
  }
}
