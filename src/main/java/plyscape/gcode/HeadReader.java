package plyscape.gcode;

import java.util.Optional;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import plyscape.machine.Clamping;
import plyscape.machine.CuttingData;
import plyscape.machine.Form;
import plyscape.machine.Machine;
import plyscape.machine.Motion;
import plyscape.machine.SettingUp;
import plyscape.machine.Tool;
import plyscape.machine.Travel;

/**
 * What the comments at the head of a program say of machine and tool, as {@link HeadWriter} writes
 * them; empty for programs from elsewhere. The version isn't looked at: a line that says something
 * else is as good as none. Immutable.
 *
 * @param machine limits and zero; its Z error isn't written and is 0
 * @param tool the tool; its rpm comes from the first S word
 */
public record HeadReader(Optional<Machine> machine, Optional<Tool> tool) {

  private static final String NUMBER = "(\\d{1,9}(?:\\.\\d{1,3})?)";

  private static final Pattern TOOL =
      pattern(
          "tool: (.{1,400}?), (flat|ball|tapered), diameter # mm, flutes (\\d{1,3}), flute length #"
              + " mm cutting: feed # mm/min, plunge # mm/min, stepdown # mm, stepover #");
  private static final Pattern TAPER = pattern("taper: tip diameter # mm, taper # degrees");
  private static final Pattern CLAMPING =
      pattern("clamping: shank diameter # mm, stickout # mm, holder diameter # mm");
  private static final Pattern ZERO =
      pattern("zero: X0 Y0 ([a-z ]+?)(?: corner)? of the panel, Z0 (its top face|the table)");
  private static final Pattern MACHINE =
      pattern("machine: travel # x # x # mm, rapid # mm/min, acceleration # mm/s2, cornering # mm");
  private static final Pattern SAFE = pattern("safe height # mm over the top face");
  private static final Pattern SPIN_UP = pattern("spindle: # s to its speed");
  private static final Pattern SPEED = pattern("(?m)^M3 S#");

  /** Comments looked at; a head is a dozen lines. */
  private static final int MOST_LINES = 60;

  private static Pattern pattern(String text) {
    return Pattern.compile(text.replace("#", NUMBER));
  }

  /** Reads the head of a program's text; never fails. */
  public static HeadReader read(String text) {
    StringBuilder head = new StringBuilder();
    text.lines()
        .limit(MOST_LINES)
        .takeWhile(line -> line.startsWith("(") || line.isBlank() || line.equals("%"))
        .filter(line -> line.startsWith("(") && line.endsWith(")"))
        .forEach(
            line ->
                head.append(line, 1, line.length() - 1)
                    .append(' ')); // long ones were broken at a blank
    Matcher speed = SPEED.matcher(text.substring(0, Math.min(text.length(), 20_000)));
    return new HeadReader(machine(head), tool(head, speed.find() ? number(speed, 1) : 0));
  }

  private static Optional<Machine> machine(CharSequence head) {
    Matcher zero = ZERO.matcher(head);
    Matcher limits = MACHINE.matcher(head);
    Matcher safe = SAFE.matcher(head);
    Matcher spinUp = SPIN_UP.matcher(head);
    if (!zero.find() || !limits.find() || !safe.find()) {
      return Optional.empty();
    }
    for (Machine.Zero place : Machine.Zero.values()) {
      if (HeadWriter.place(place).replace(" corner", "").equals(zero.group(1))) {
        return sane(
            () ->
                Machine.USUAL
                    .with(new Travel(number(limits, 1), number(limits, 2), number(limits, 3)))
                    .with(new Motion(number(limits, 4), number(limits, 5), number(limits, 6), 0))
                    .with(
                        new SettingUp(
                            place,
                            zero.group(2).equals("the table")
                                ? Machine.ZeroZ.BOTTOM
                                : Machine.ZeroZ.TOP,
                            number(safe, 1),
                            SettingUp.USUAL.toolChangeS(),
                            spinUp.find() ? number(spinUp, 1) : 0)));
      }
    }
    return Optional.empty();
  }

  private static Optional<Tool> tool(CharSequence head, double rpm) {
    Matcher m = TOOL.matcher(head);
    if (!m.find()) {
      return Optional.empty();
    }
    Matcher taper = TAPER.matcher(head);
    Matcher clamping = CLAMPING.matcher(head);
    boolean tapered = taper.find();
    boolean clamped = clamping.find();
    return sane(
        () ->
            new Tool(
                m.group(1),
                new Form(
                    Tool.Shape.valueOf(m.group(2).toUpperCase(java.util.Locale.ROOT)),
                    number(m, 3),
                    number(m, 5),
                    Integer.parseInt(m.group(4)),
                    tapered ? number(taper, 1) : 0,
                    tapered ? number(taper, 2) : 0,
                    Tool.Spiral.UNSAID),
                new CuttingData(rpm, number(m, 6), number(m, 7), number(m, 8), number(m, 9)),
                clamped
                    ? new Clamping(number(clamping, 1), number(clamping, 2), number(clamping, 3))
                    : Clamping.UNKNOWN));
  }

  /** What figures make, or nothing where they can't be of a cutter or a machine. */
  private static <T> Optional<T> sane(Supplier<T> made) {
    try {
      return Optional.of(made.get());
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  private static double number(Matcher matcher, int group) {
    return Double.parseDouble(matcher.group(group));
  }
}
