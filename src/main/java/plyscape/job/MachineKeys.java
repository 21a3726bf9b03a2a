package plyscape.job;

import java.util.List;
import plyscape.job.Keys.Range;
import plyscape.machine.Machine;

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
            "tool_change");
    YamlNode spans = keys.optional("travel", TRAVEL);
    List<Double> travel =
        spans == null ? List.of(300.0, 300.0, 80.0) : Keys.numbers(spans, 3, SPAN, TRAVEL);
    return new Machine(
        travel.get(0),
        travel.get(1),
        travel.get(2),
        keys.number("rapid", 4000, Range.of(10, 200_000, "mm/min")),
        keys.number("acceleration", 300, Range.of(5, 100_000, "mm/s2")),
        keys.number("cornering", 0.02, Range.mm(0, 5)),
        keys.number("safe_height", 4, Range.mm(0.1, 200)),
        keys.number("z_error", 0.03, Range.mm(0, 5)),
        keys.choice("zero", Machine.Zero.LOWER_LEFT, Machine.Zero.values()),
        keys.choice("zero_z", Machine.ZeroZ.TOP, Machine.ZeroZ.values()),
        keys.number("slot_feed", Machine.SLOT_FEED, Range.of(0.05, 1, "")),
        keys.choice("direction", Direction.CLIMB, Direction.values()) == Direction.CLIMB,
        keys.number("ramp", Machine.RAMP_DEGREES, Range.of(0.5, 45, "degrees")),
        keys.number("wall_allowance", 0, Range.mm(0, 20)),
        keys.number("tool_change", Machine.TOOL_CHANGE_S, Range.of(0, 3600, "s")));
  }
}
