package plyscape.lettering;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The built-in letters, single strokes drawn for this program, so that neither pictures nor letters
 * in wood depend on the fonts of a machine: Latin with the accents of Europe's languages, Greek,
 * Cyrillic, digits and signs. What the alphabet lacks becomes a box. Units: a capital is {@link
 * #CAP_UNITS} high, the baseline is at 0, Y up.
 */
public final class StrokeAlphabet {

  /** Height of a capital letter. */
  public static final double CAP_UNITS = 6;

  private static final String FILE = "alphabet.txt";
  private static final double SPACE = 3.2;
  private static final int CARON = 0x30c;
  private static final int CEDILLA = 0x327;
  private static final int COMMA_ABOVE = 0x312;

  private static final Map<Integer, Glyph> GLYPHS = new HashMap<>();
  private static final Map<Integer, Mark> MARKS = new HashMap<>();

  static {
    GLYPHS.put((int) ' ', new Glyph(List.of(), SPACE, true));
    GLYPHS.put(0xa0, new Glyph(List.of(), SPACE, true));
    read();
  }

  private static final Glyph UNKNOWN = unknown();

  private StrokeAlphabet() {}

  private static void read() {
    try (InputStream in = StrokeAlphabet.class.getResourceAsStream(FILE);
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        if (line.startsWith("+mark ")) {
          String[] words = line.split(" ", 4);
          MARKS.put(Integer.parseInt(words[1], 16), mark(words[2].equals("above"), words[3]));
        } else if (!line.startsWith("--")) {
          int sign = line.codePointAt(0);
          String rest = line.substring(Character.charCount(sign) + 1);
          GLYPHS.put(
              sign,
              rest.startsWith("= ") ? GLYPHS.get(rest.codePointAt(2)) : Glyph.of(strokes(rest)));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Glyph unknown() {
    Glyph box = Glyph.of(strokes("0208383202"));
    return new Glyph(box.strokes(), box.advance(), false);
  }

  /** The letters of a text, in order, accents on them. */
  public static List<Glyph> glyphs(String text) {
    int[] signs =
        Normalizer.normalize(Normalizer.normalize(text, Normalizer.Form.NFC), Normalizer.Form.NFD)
            .codePoints()
            .toArray();
    List<Glyph> out = new ArrayList<>();
    int i = 0;
    while (i < signs.length) {
      int next = i + 1;
      while (next < signs.length && isMark(signs[next])) {
        next++;
      }
      out.addAll(letter(signs, i, next));
      i = next;
    }
    return out;
  }

  /** How far a text runs in X, units. */
  public static double width(String text) {
    return glyphs(text).stream().mapToDouble(Glyph::advance).sum();
  }

  private static boolean isMark(int sign) {
    return Character.getType(sign) == Character.NON_SPACING_MARK;
  }

  /** A letter and the marks after it; several letters for signs that stand for several. */
  private static List<Glyph> letter(int[] signs, int from, int to) {
    int sign = signs[from];
    Glyph known = GLYPHS.get(sign);
    if (known == null) {
      String apart = Normalizer.normalize(Character.toString(sign), Normalizer.Form.NFKD);
      return apart.equals(Character.toString(sign)) ? List.of(UNKNOWN) : glyphs(apart);
    }
    Glyph out = known;
    for (int k = from + 1; k < to; k++) {
      out = marked(out, sign, signs[k]);
    }
    return List.of(out);
  }

  private static Glyph marked(Glyph letter, int sign, int mark) {
    // Tall letters have no room for a caron above; what has a tail none for a cedilla below.
    if (mark == CARON && "dtlL".indexOf(sign) >= 0) {
      double x = letter.extent(0)[1] + 1.2;
      return letter.with(List.of(new double[] {x, 6, x - 0.3, 4.4}));
    }
    Mark found = MARKS.get(mark == CEDILLA && sign == 'g' ? COMMA_ABOVE : mark);
    if (found == null || letter.strokes().isEmpty()) {
      return letter;
    }
    boolean dotted = (sign == 'i' || sign == 'j') && letter.equals(GLYPHS.get(sign));
    Glyph bare = found.above() && dotted ? dotless(letter) : letter;
    return bare.with(found.at(bare));
  }

  /** An i or j without its dot, which is its last stroke. */
  private static Glyph dotless(Glyph letter) {
    return new Glyph(letter.strokes().subList(0, 1), letter.advance(), true);
  }

  private static Mark mark(boolean above, String text) {
    List<double[]> strokes = new ArrayList<>();
    for (String stroke : text.split(" ")) {
      double[] points = new double[stroke.length()];
      for (int i = 0; i < points.length; i++) {
        double half = stroke.charAt(i) - '0';
        points[i] = i % 2 == 0 ? (half - 4) / 2 : half / 2;
      }
      strokes.add(points);
    }
    return new Mark(above, strokes);
  }

  private static List<double[]> strokes(String text) {
    List<double[]> strokes = new ArrayList<>();
    for (String stroke : text.trim().split(" ")) {
      double[] points = new double[stroke.length()];
      for (int i = 0; i < points.length; i++) {
        points[i] = stroke.charAt(i) - '0' - (i % 2 == 1 ? 2 : 0);
      }
      strokes.add(points);
    }
    return strokes;
  }
}
