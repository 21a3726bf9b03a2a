package plyscape.gcode;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The words that plyscape's programs are made of (src/contract.md, section 7): G0 G1 G2 G3 G17 G21
 * G54 G90 G94, M3 M5 M30, X Y Z I J F S. Others may be understood, but what they do hangs on the
 * control or on a person, so each kind is reported once, with its first place and how often it
 * comes.
 */
final class Dialect {

  private static final int[] G = {0, 1, 2, 3, 17, 21, 54, 90, 94};
  private static final int[] M = {3, 5, 30};
  private static final String LETTERS = "XYZIJFSGM";

  private final Map<String, Program.Problem> first = new LinkedHashMap<>();
  private final Map<String, Integer> counts = new LinkedHashMap<>();

  /** Looks at the words of a line. */
  void check(WordLine words, int line) {
    if (words.numbered) {
      note("N", line, 1);
    }
    boolean ends = false;
    for (int i = 0; i < words.count; i++) {
      char letter = words.letters[i];
      double value = words.values[i];
      if (letter == 'G' || letter == 'M') {
        if (!known(letter == 'G' ? G : M, value)) {
          note(letter + GcodeNumber.shortest(value), line, words.columns[i] + 1);
        }
        ends |= letter == 'M' && (value == 5 || value == 30);
      } else if (LETTERS.indexOf(letter) < 0) {
        note(String.valueOf(letter), line, words.columns[i] + 1);
      }
    }
    if (ends && words.count > 1) {
      note("M5 or M30 beside other words", line, 1);
    }
  }

  private static boolean known(int[] codes, double value) {
    for (int code : codes) {
      if (value == code) {
        return true;
      }
    }
    return false;
  }

  private void note(String what, int line, int column) {
    first.putIfAbsent(what, new Program.Problem(line, column, what));
    counts.merge(what, 1, Integer::sum);
  }

  /** One a kind, in the order of their first places. */
  List<Program.Problem> problems() {
    List<Program.Problem> list = new ArrayList<>();
    for (Program.Problem p : first.values()) {
      int count = counts.get(p.message());
      list.add(
          new Program.Problem(
              p.line(),
              p.column(),
              p.message() + (count > 1 ? ", " + count + " times: " : ": ") + why(p.message())));
    }
    return List.copyOf(list);
  }

  private static String why(String what) {
    return switch (what) {
      case "M4" -> "turns the spindle backwards, which only a left-hand cutter stands";
      case "M0", "M1" -> "stops the program until someone starts it again";
      case "G4", "P" -> "a dwell, whose unit differs between controls";
      case "G20" -> "inches; lengths are mm";
      case "G91" -> "relative coordinates: a line left out moves all that follow";
      case "R" -> "an arc by its radius, which two centres fit; write I and J";
      case "M5 or M30 beside other words" -> "they stand on lines of their own";
      default -> "not a word of this dialect (G0-G3 G17 G21 G54 G90 G94, M3 M5 M30, X Y Z I J F S)";
    };
  }
}
