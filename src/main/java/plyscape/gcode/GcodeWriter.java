package plyscape.gcode;

import java.util.ArrayList;
import java.util.List;
import plyscape.machine.Machine;
import plyscape.machine.Move;

/**
 * Gives the text of one G-code file: head, passes, end (src/contract.md, section 7). The first
 * motion goes straight up to safe height, as nobody knows where the machine stands; the last one
 * ends there. Same moves, same bytes.
 */
public final class GcodeWriter {

  private GcodeWriter() {}

  /** The whole file, ASCII, LF. */
  public static String write(ProgramHead head, List<PassText> passes) {
    return lined(head, passes).text();
  }

  /** The whole file, with the line at which each pass begins. */
  public static GcodeText lined(ProgramHead head, List<PassText> passes) {
    StringBuilder out = new StringBuilder(1 << 16);
    HeadWriter.append(out, head);
    Machine machine = head.machine();
    ProgramFrame frame =
        ProgramFrame.of(machine, head.widthMm(), head.heightMm(), head.thicknessMm());
    MoveWriter moves = new MoveWriter(out, frame);
    out.append("G17 G21 G90 G94 G54\n");
    moves.up(-machine.safeHeightMm());
    out.append("M3 S").append(GcodeNumber.shortest(head.tool().rpm())).append('\n');
    Move over = machine.spinUpS() > 0 ? first(passes) : null;
    if (over != null) {
      SpindleStart.write(out, moves, machine, over);
    }
    List<Integer> lines = new ArrayList<>();
    boolean skip = over != null; // it stands there already
    int counted = 0;
    int line = 1;
    for (PassText pass : passes) {
      line += lineEnds(out, counted);
      counted = out.length();
      lines.add(line);
      GcodeComment.append(out, pass.comment());
      moves.restate();
      for (Move move : pass.moves()) {
        if (skip) {
          skip = false;
        } else {
          moves.write(move);
        }
      }
    }
    moves.up(-machine.safeHeightMm());
    out.append("M5\nM30\n");
    return new GcodeText(out.toString(), List.copyOf(lines));
  }

  /**
   * The rapid at safe height to where the first cut begins, or null if the moves don't begin with
   * one.
   */
  private static Move first(List<PassText> passes) {
    return passes.stream()
        .flatMap(pass -> pass.moves().stream())
        .findFirst()
        .filter(move -> move.kind() == Move.Kind.RAPID)
        .orElse(null);
  }

  /** Line ends from a position on; apart from the loop over passes, as Java compiles it sooner. */
  private static int lineEnds(StringBuilder out, int from) {
    int count = 0;
    for (int i = from; i < out.length(); i++) {
      count += out.charAt(i) == '\n' ? 1 : 0;
    }
    return count;
  }
}
