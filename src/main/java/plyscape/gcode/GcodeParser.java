package plyscape.gcode;

import java.util.ArrayList;
import java.util.List;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.machine.Machine;
import plyscape.machine.Move;

/**
 * Reads a program of the strict RS274 subset (NISTIR 6556; references.md, section 1) to motions in
 * panel coordinates.
 *
 * <p>More than {@link Dialect} has is understood, and reported as a problem of the program: G0 G1
 * G2 G3 with I J or R, G4, G17, G20 G21, G40, G49, G54, G61 G64, G80, G90 G91, G94, M0 M1 M2 M30,
 * M3 M4 M5, M7 M8 M9, M48, F S N, comments, % lines. Anything else is refused with line and column,
 * as a motion that isn't understood can't be vouched for. The order of execution on a line is that
 * of section 3.8 of the standard: M5 beside a motion stops the spindle first. Coordinates keep a
 * double's precision.
 */
public final class GcodeParser {

  private final String file;
  private final String text;
  private final WordLine words;
  private final LineWords sorted = new LineWords();
  private final ModalState state;
  private final List<Program.Block> blocks = new ArrayList<>();
  private final List<Program.Speed> speeds = new ArrayList<>();
  private final Dialect dialect = new Dialect();
  private int line;

  private GcodeParser(String file, String text, ProgramFrame frame, double startDepth) {
    this.file = file;
    this.text = text;
    this.words = new WordLine(file, text);
    this.state = new ModalState(frame, startDepth);
  }

  /**
   * Reads a program for a panel that lies as the machine says.
   *
   * @param file its name, for messages
   * @throws InputFault with line and column for what isn't understood
   */
  public static Program parse(
      String file,
      String text,
      Machine machine,
      double widthMm,
      double heightMm,
      double thicknessMm) {
    ProgramFrame frame = ProgramFrame.of(machine, widthMm, heightMm, thicknessMm);
    return parse(file, text, frame, -machine.safeHeightMm());
  }

  /** Reads a program in a frame; the tool is taken to stand over its zero at the given depth. */
  public static Program parse(String file, String text, ProgramFrame frame, double startDepth) {
    GcodeParser parser = new GcodeParser(file, text, frame, startDepth);
    parser.lines();
    return new Program(
        file,
        frame.zeroX(),
        frame.zeroY(),
        startDepth,
        List.copyOf(parser.blocks),
        List.copyOf(parser.speeds),
        parser.dialect.problems());
  }

  private void lines() {
    boolean percent = false;
    boolean content = false;
    int from = 0;
    int length = text.length();
    while (from < length) {
      line++;
      int to = text.indexOf('\n', from);
      to = to < 0 ? length : to;
      int stop = to > from && text.charAt(to - 1) == '\r' ? to - 1 : to;
      if (!isPercent(from, stop)) {
        content |= stop > from;
        if (endsAt(from, stop)) {
          return;
        }
      } else if (!content) {
        percent = true;
        content = true;
      } else if (percent) {
        return;
      } else {
        throw fault(line, "a % line in the middle", "% stands on the first and last line");
      }
      from = to + 1;
    }
    throw fault(
        Math.max(line, 1),
        "the program has no end",
        "end it with M2 or M30, or put it between two % lines; is the file cut off?");
  }

  /** Takes a line in; whether it ends the program. */
  private boolean endsAt(int from, int stop) {
    words.read(from, stop, line);
    if (words.count > 0) {
      return execute();
    }
    if (words.numbered) {
      dialect.check(words, line);
    }
    return false;
  }

  private InputFault fault(int at, String found, String wanted) {
    return new InputFault(Place.at(file, at, 1), found, wanted);
  }

  private boolean isPercent(int from, int to) {
    return text.substring(from, Math.min(to, from + 80)).strip().equals("%");
  }

  /** Executes the words of one line; gives true at the program's end. */
  private boolean execute() {
    sorted.take(words);
    dialect.check(words, line);
    state.settings(sorted, words);
    if (sorted.has('S')) {
      speeds.add(new Program.Speed(line, sorted.value('S')));
    }
    Move move = state.motion(sorted, words);
    if (move != null) {
      blocks.add(new Program.Block(line, move, state.spindleOn()));
    }
    int stop = sorted.m(LineWords.STOP);
    return stop == 2 || stop == 30;
  }
}
