package plyscape.gcode;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import plyscape.machine.Machine;
import plyscape.machine.Tool;
import plyscape.text.Durations;

/**
 * The comments at the head of a program: panel, zero, machine, cutter, the time expected, and the
 * usual cautions (src/contract.md, sections 7 and 10). {@link HeadReader} reads machine and cutter
 * back.
 */
final class HeadWriter {

  private static final List<String> CAUTIONS =
      List.of(
          "caution: check zero, clamps and travel; run it in the air first",
          "caution: G0 must go in straight lines; rapids pass close over wood",
          "caution: eye, ear and dust protection; dust from dyed or resin-glued wood",
          "caution: never leave it running alone; feeds and speeds are starting points",
          "the maker of machine, cutter and glue, and local rules, have the last word");

  private HeadWriter() {}

  /** Appends the head's comment lines. */
  static void append(StringBuilder out, ProgramHead head) {
    List<String> lines = new ArrayList<>();
    panel(lines, head);
    machine(lines, head.machine());
    tool(lines, head.tool());
    lines.add(
        "time expected "
            + Durations.text(head.timeS())
            + ", without tool change and spindle start");
    head.cautions().forEach(caution -> lines.add("caution: " + caution));
    lines.addAll(CAUTIONS);
    for (String line : lines) {
      GcodeComment.append(out, line);
    }
  }

  private static void panel(List<String> lines, ProgramHead head) {
    Machine machine = head.machine();
    lines.add(head.title());
    lines.add("plyscape " + head.version());
    lines.add(
        format(
            "panel # x # mm, thickness # mm", head.widthMm(), head.heightMm(), head.thicknessMm()));
    lines.add(
        "zero: X0 Y0 "
            + place(machine.zero())
            + " of the panel, Z0 "
            + (machine.zeroZ() == Machine.ZeroZ.TOP ? "its top face" : "the table under it"));
    lines.add(
        format(
            "safe height # mm over the top face, deepest cut # mm",
            machine.safeHeightMm(),
            head.deepestMm()));
  }

  private static void machine(List<String> lines, Machine machine) {
    lines.add(
        format(
            "machine: travel # x # x # mm, rapid # mm/min, acceleration # mm/s2, cornering # mm",
            machine.travelXMm(),
            machine.travelYMm(),
            machine.travelZMm(),
            machine.rapidMmPerMin(),
            machine.accelerationMmPerS2(),
            machine.corneringMm()));
    lines.add(format("spindle: # s to its speed", machine.spinUpS()));
  }

  private static void tool(List<String> lines, Tool tool) {
    lines.add(
        "tool: "
            + tool.name()
            + ", "
            + tool.shape().name().toLowerCase(Locale.ROOT)
            + format(
                ", diameter # mm, flutes #, flute length # mm",
                tool.diameterMm(),
                tool.flutes(),
                tool.fluteLengthMm()));
    lines.add(
        format(
            "cutting: feed # mm/min, plunge # mm/min, stepdown # mm, stepover #",
            tool.feedMmPerMin(),
            tool.plungeMmPerMin(),
            tool.stepdownMm(),
            tool.stepover()));
    if (!tool.spiralNote().isEmpty()) {
      lines.add("spiral: " + tool.spiralNote());
    }
    if (tool.shape() == Tool.Shape.TAPERED) {
      lines.add(
          format(
              "taper: tip diameter # mm, taper # degrees",
              tool.tipDiameterMm(),
              tool.taperDegrees()));
    }
    if (tool.shankDiameterMm() > 0 || tool.holderDiameterMm() > 0) {
      lines.add(
          format(
              "clamping: shank diameter # mm, stickout # mm, holder diameter # mm",
              tool.shankDiameterMm(),
              tool.stickoutMm(),
              tool.holderDiameterMm()));
    }
  }

  /** The text with each {@code #} replaced by the next value, with up to three decimals. */
  private static String format(String text, double... values) {
    StringBuilder out = new StringBuilder();
    int next = 0;
    for (int i = 0; i < text.length(); i++) {
      if (text.charAt(i) == '#') {
        out.append(GcodeNumber.shortest(values[next++]));
      } else {
        out.append(text.charAt(i));
      }
    }
    return out.toString();
  }

  /** Words for the place of the program's zero. */
  static String place(Machine.Zero zero) {
    return zero == Machine.Zero.CENTRE
        ? "centre"
        : zero.name().toLowerCase(Locale.ROOT).replace('_', ' ') + " corner";
  }
}
