package plyscape.gcode;

import java.util.Arrays;

/**
 * One line's words sorted by letter, with the rules of NISTIR 6556 section 3.3.5 checked: one word
 * a letter, one G or M code a modal group. Codes are kept times ten ({@code G61.1} is 611). Reused
 * from line to line.
 */
final class LineWords {

  /**
   * Numbers of G and M words must lie this near to a whole number, or tenth for G (section
   * 3.3.2.1).
   */
  private static final double INTEGER_TOLERANCE = 0.0001;

  /** Most M words on a line (section 3.3.5). */
  private static final int MOST_M = 4;

  /**
   * Modal groups: motion, plane, distance, feed mode, units, compensation, length, offset, path
   * control, dwell.
   */
  private static final int[][] G_GROUPS = {
    {0, 10, 20, 30, 800},
    {170},
    {900, 910},
    {940},
    {200, 210},
    {400},
    {490},
    {540},
    {610, 611, 640},
    {40},
  };

  /** Stopping, spindle, coolant, overrides. */
  private static final int[][] M_GROUPS = {{0, 1, 2, 30}, {3, 4, 5}, {7, 8, 9}, {48, 49}};

  static final int MOTION = 0;
  static final int DISTANCE = 2;
  static final int UNITS = 4;
  static final int DWELL = 9;
  static final int STOP = 0;
  static final int SPINDLE = 1;

  /** Index of the word of each letter in the line, or -1. */
  private final int[] word = new int[26];

  private final int[] gWord = new int[G_GROUPS.length];
  private final int[] mWord = new int[M_GROUPS.length];
  private WordLine words;

  /** Takes a line's words. */
  void take(WordLine line) {
    words = line;
    Arrays.fill(word, -1);
    Arrays.fill(gWord, -1);
    Arrays.fill(mWord, -1);
    int mCount = 0;
    for (int i = 0; i < line.count; i++) {
      char letter = line.letters[i];
      switch (letter) {
        case 'G' -> put(gWord, G_GROUPS, i, code(i, 10));
        case 'M' -> {
          if (++mCount > MOST_M) {
            throw line.fault(i, "more than four M words on a line", "spread them over lines");
          }
          put(mWord, M_GROUPS, i, code(i, 1));
        }
        case 'X', 'Y', 'Z', 'I', 'J', 'R', 'F', 'S', 'P', 'T' -> {
          if (word[letter - 'A'] >= 0) {
            throw line.fault(i, "a second " + letter + " on the line", "one word a letter");
          }
          word[letter - 'A'] = i;
        }
        default -> throw line.fault(i, "letter " + letter, letterHint(letter));
      }
    }
    if (has('T')
        && (value('T') < 0 || Math.abs(value('T') - Math.rint(value('T'))) > INTEGER_TOLERANCE)) {
      throw line.fault(index('T'), "tool number " + value('T'), "a whole number from 0");
    }
  }

  boolean has(char letter) {
    return word[letter - 'A'] >= 0;
  }

  double value(char letter) {
    return words.values[word[letter - 'A']];
  }

  int index(char letter) {
    return word[letter - 'A'];
  }

  /** Code (times ten) of a G group, or -1. */
  int g(int group) {
    return gWord[group] < 0 ? -1 : code(gWord[group], 10);
  }

  int gIndex(int group) {
    return gWord[group];
  }

  /** Code of an M group, or -1. */
  int m(int group) {
    return mWord[group] < 0 ? -1 : code(mWord[group], 1);
  }

  boolean hasAxis() {
    return has('X') || has('Y') || has('Z');
  }

  private int code(int i, int factor) {
    double scaled = words.values[i] * factor;
    double whole = Math.rint(scaled);
    if (scaled < -INTEGER_TOLERANCE
        || whole > 9999
        || Math.abs(scaled - whole) > INTEGER_TOLERANCE * factor) {
      throw words.fault(
          i, "code " + name(i), "G0 to G99.3 and M0 to M99, without further decimals");
    }
    return (int) whole;
  }

  private String name(int i) {
    double value = words.values[i];
    return words.letters[i]
        + (Math.abs(value) < 1e6 ? GcodeNumber.shortest(value) : String.valueOf(value));
  }

  private void put(int[] target, int[][] groups, int i, int code) {
    for (int group = 0; group < groups.length; group++) {
      for (int known : groups[group]) {
        if (known == code) {
          if (target[group] >= 0) {
            throw words.fault(
                i, name(i) + " beside " + name(target[group]), "one code of a group on a line");
          }
          target[group] = i;
          return;
        }
      }
    }
    throw words.fault(i, "code " + name(i), codeHint(words.letters[i], code));
  }

  private static String letterHint(char letter) {
    return switch (letter) {
      case 'A', 'B', 'C', 'U', 'V', 'W' -> "only the axes X Y Z are read";
      case 'K' -> "arcs lie in the XY plane (G17), so only I and J";
      case 'O' -> "subprograms and program numbers aren't read";
      case 'D', 'H' ->
          "compensation isn't read; the paths must be those of the tool's centre and tip";
      default -> "X Y Z I J R F S P T N G M are read";
    };
  }

  private static String codeHint(char letter, int code) {
    if (letter == 'M') {
      return code == 6
          ? "one file a tool: split it at the tool change"
          : "M0 M1 M2 M30 M3 M4 M5 M7 M8 M9 M48 M49 are read";
    }
    return switch (code) {
      case 180, 190 -> "arcs lie in the XY plane, G17";
      case 410, 420, 430 ->
          "compensation isn't read; the paths must be those of the tool's centre and tip";
      case 550, 560, 570, 580, 590, 591, 592, 593 -> "only the offset G54 is known";
      case 930, 950 -> "feeds are per minute, G94";
      case 280, 300, 530, 920, 100 ->
          "where it leads hangs on the machine's own settings; use G54 coordinates";
      case 901 -> "I and J are relative to the arc's start";
      default ->
          code >= 730 && code <= 890
              ? "canned cycles aren't read; write the moves"
              : "G0 G1 G2 G3 G4 G17 G20 G21 G40 G49 G54 G61 G64 G80 G90 G91 G94 are read";
    };
  }
}
