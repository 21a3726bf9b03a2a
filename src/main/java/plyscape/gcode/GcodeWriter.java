package plyscape.gcode;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import plyscape.machine.Machine;
import plyscape.machine.Move;
import plyscape.machine.Tool;

/**
 * Gives the text of one G-code file: head, passes, end (contract, section 7). The first motion goes
 * straight up to safe height, as nobody knows where the machine stands; the last one ends there.
 * Same moves, same bytes.
 */
public final class GcodeWriter {

  private GcodeWriter() {}

  /** The whole file, ASCII, LF. */
  public static String write(GcodeHeader header, List<PassText> passes) {
    return lined(header, passes).text();
  }

  /** The whole file, with the line at which each pass begins. */
  public static GcodeText lined(GcodeHeader header, List<PassText> passes) {
    StringBuilder out = new StringBuilder(1 << 16);
    head(out, header);
    Machine machine = header.machine();
    ProgramFrame frame =
        ProgramFrame.of(machine, header.widthMm(), header.heightMm(), header.thicknessMm());
    MoveWriter moves = new MoveWriter(out, frame);
    out.append("G17 G21 G90 G94 G54\n");
    moves.up(-machine.safeHeightMm());
    out.append("M3 S").append(GcodeNumber.shortest(header.tool().rpm())).append('\n');
    List<Integer> lines = new ArrayList<>();
    int counted = 0;
    int line = 1;
    for (PassText pass : passes) {
      line += lineEnds(out, counted);
      counted = out.length();
      lines.add(line);
      GcodeComment.append(out, pass.comment());
      moves.restate();
      for (Move move : pass.moves()) {
        moves.write(move);
      }
    }
    moves.up(-machine.safeHeightMm());
    out.append("M5\nM30\n");
    return new GcodeText(out.toString(), List.copyOf(lines));
  }

  /** Line ends from a position on; apart from the loop over passes, as Java compiles it sooner. */
  private static int lineEnds(StringBuilder out, int from) {
    int count = 0;
    for (int i = from; i < out.length(); i++) {
      count += out.charAt(i) == '\n' ? 1 : 0;
    }
    return count;
  }

  private static void head(StringBuilder out, GcodeHeader h) {
    Tool tool = h.tool();
    Machine machine = h.machine();
    List<String> lines =
        new ArrayList<>(
            List.of(
                h.title(),
                "plyscape " + h.version(),
                "panel "
                    + mm(h.widthMm())
                    + " x "
                    + mm(h.heightMm())
                    + " mm, thickness "
                    + mm(h.thicknessMm())
                    + " mm",
                "zero: X0 Y0 "
                    + place(machine.zero())
                    + " of the panel, Z0 "
                    + (machine.zeroZ() == Machine.ZeroZ.TOP
                        ? "its top face"
                        : "the table under it"),
                "safe height "
                    + mm(machine.safeHeightMm())
                    + " mm over the top face, deepest cut "
                    + mm(h.deepestMm())
                    + " mm",
                "machine: travel "
                    + mm(machine.travelXMm())
                    + " x "
                    + mm(machine.travelYMm())
                    + " x "
                    + mm(machine.travelZMm())
                    + " mm, rapid "
                    + mm(machine.rapidMmPerMin())
                    + " mm/min, acceleration "
                    + mm(machine.accelerationMmPerS2())
                    + " mm/s2, cornering "
                    + mm(machine.corneringMm())
                    + " mm",
                "tool: "
                    + tool.name()
                    + ", "
                    + tool.shape().name().toLowerCase(Locale.ROOT)
                    + ", diameter "
                    + mm(tool.diameterMm())
                    + " mm, flutes "
                    + tool.flutes()
                    + ", flute length "
                    + mm(tool.fluteLengthMm())
                    + " mm",
                "cutting: feed "
                    + mm(tool.feedMmPerMin())
                    + " mm/min, plunge "
                    + mm(tool.plungeMmPerMin())
                    + " mm/min, stepdown "
                    + mm(tool.stepdownMm())
                    + " mm, stepover "
                    + mm(tool.stepover())));
    if (!tool.spiralNote().isEmpty()) {
      lines.add("spiral: " + tool.spiralNote());
    }
    if (tool.shape() == Tool.Shape.TAPERED) {
      lines.add(
          "taper: tip diameter "
              + mm(tool.tipDiameterMm())
              + " mm, taper "
              + mm(tool.taperDegrees())
              + " degrees");
    }
    if (tool.shankDiameterMm() > 0 || tool.holderDiameterMm() > 0) {
      lines.add(
          "clamping: shank diameter "
              + mm(tool.shankDiameterMm())
              + " mm, stickout "
              + mm(tool.stickoutMm())
              + " mm, holder diameter "
              + mm(tool.holderDiameterMm())
              + " mm");
    }
    lines.addAll(
        List.of(
            "time expected " + duration(h.timeS()) + ", without tool change and spindle start",
            "caution: check zero, clamps and travel; run it in the air first",
            "caution: eye, ear and dust protection; dust from dyed or resin-glued wood",
            "caution: never leave it running alone; feeds and speeds are starting points",
            "the maker of machine, cutter and glue, and local rules, have the last word"));
    for (String line : lines) {
      GcodeComment.append(out, line);
    }
  }

  private static String mm(double value) {
    return GcodeNumber.shortest(value);
  }

  /** Words for the place of the program's zero; {@link GcodeHead} reads them back. */
  static String place(Machine.Zero zero) {
    return zero == Machine.Zero.CENTRE
        ? "centre"
        : zero.name().toLowerCase(Locale.ROOT).replace('_', ' ') + " corner";
  }

  private static String duration(double seconds) {
    long s = Math.round(seconds);
    String minutes = s / 60 % 60 + " min " + s % 60 + " s";
    return s >= 3600 ? s / 3600 + " h " + minutes : minutes;
  }
}
