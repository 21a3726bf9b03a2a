package plyscape.job;

import java.util.List;
import plyscape.job.yaml.Keys;
import plyscape.job.yaml.Keys.Range;
import plyscape.job.yaml.YamlNode;
import plyscape.machine.CutRules;
import plyscape.machine.Machine;
import plyscape.machine.Motion;
import plyscape.machine.SettingUp;
import plyscape.machine.Travel;

/** Reads {@code machine} of a job. */
final class MachineKeys {

  private static final String TRAVEL = "three spans in mm, [x, y, z], such as [300, 300, 80]";
  private static final Range SPAN = Range.mm(1, 10_000);

  private MachineKeys() {}

  /** Which way walls are cut. */
  private enum Direction {
    CLIMB,
    CONVENTIONAL
  }

  static Machine read(Keys job) {
    Keys keys =
        job.child(
            "machine",
            "travel",
            "rapid",
            "acceleration",
            "cornering",
            "safe_height",
            "z_error",
            "zero",
            "zero_z",
            "slot_feed",
            "direction",
            "ramp",
            "wall_allowance",
            "least_chip",
            "tool_change",
            "spin_up");
    return new Machine(travel(keys), motion(keys), settingUp(keys), rules(keys));
  }

  private static Travel travel(Keys keys) {
    YamlNode spans = keys.optional("travel", TRAVEL);
    if (spans == null) {
      return Travel.USUAL;
    }
    List<Double> travel = Keys.numbers(spans, 3, SPAN, TRAVEL);
    return new Travel(travel.get(0), travel.get(1), travel.get(2));
  }

  private static Motion motion(Keys keys) {
    Motion usual = Motion.USUAL;
    return new Motion(
        keys.number("rapid", usual.rapidMmPerMin(), Range.of(10, 200_000, "mm/min")),
        keys.number("acceleration", usual.accelerationMmPerS2(), Range.of(5, 100_000, "mm/s2")),
        keys.number("cornering", usual.corneringMm(), Range.mm(0, 5)),
        keys.number("z_error", usual.zErrorMm(), Range.mm(0, 5)));
  }

  private static SettingUp settingUp(Keys keys) {
    SettingUp usual = SettingUp.USUAL;
    return new SettingUp(
        keys.choice("zero", usual.zero(), Machine.Zero.values()),
        keys.choice("zero_z", usual.zeroZ(), Machine.ZeroZ.values()),
        keys.number("safe_height", usual.safeHeightMm(), Range.mm(0.1, 200)),
        keys.number("tool_change", usual.toolChangeS(), Range.of(0, 3600, "s")),
        keys.number("spin_up", usual.spinUpS(), Range.of(0, 120, "s")));
  }

  private static CutRules rules(Keys keys) {
    CutRules usual = CutRules.USUAL;
    return new CutRules(
        keys.number("slot_feed", usual.slotFeed(), Range.of(0.05, 1, "")),
        keys.choice("direction", Direction.CLIMB, Direction.values()) == Direction.CLIMB,
        keys.number("ramp", usual.rampDegrees(), Range.of(0.5, 45, "degrees")),
        keys.number("wall_allowance", usual.wallAllowanceMm(), Range.mm(0, 20)),
        keys.number("least_chip", usual.leastChipMm(), Range.of(0, 1, "mm a tooth")));
  }
}
