package plyscape.render;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Single-line letters for pictures and for marks on the wood, drawn here, so that no picture
 * depends on the fonts of a machine. Printable ASCII and a few signs; letters with accents lose
 * them, anything else becomes a box. Units: a capital is {@link #CAP_UNITS} high, the baseline is
 * at 0, Y up.
 */
final class StrokeFont {

  /** Height of a capital letter. */
  static final double CAP_UNITS = 6;

  private static final double GAP = 1.5;

  /**
   * A letter: strokes as x, y, x, y ...; how far to move on for the next one.
   *
   * @param strokes polylines
   * @param advance units
   */
  record Glyph(List<double[]> strokes, double advance) {}

  private static final Map<Integer, Glyph> GLYPHS = new HashMap<>();

  // Each entry: the sign, then strokes as pairs of digits x y with the baseline at y = 2.
  private static final String SHAPES =
      """
      A 022842 1535
      B 02083847463505 3544433202
      C 4738180703123243
      D 02082846442202
      E 42020848 0535
      F 020848 0535
      G 4738180703123243 434525
      H 0208 4248 0545
      I 0208
      J 0312324348
      K 0208 4804 1542
      L 080242
      M 0208254842
      N 02084248
      O 030718384743321203
      P 02083847463505
      Q 030718384743321203 2442
      R 02083847463505 2542
      S 473818070615354443321203
      T 0848 2822
      U 080312324348
      V 082248
      W 0812366268
      X 0248 0842
      Y 082548 2522
      Z 08480242
      a 0616263532 341403122233
      b 0802 0516263533221203
      c 3526160503122233
      d 3832 3526160503122233
      e 04343526160503122233
      f 28181702 0626
      g 3631201000 3526160503122233
      h 0802 0516263532
      i 0602 0807
      j 161100 1817
      k 0802 3604 1432
      l 080312
      m 0602 05162522 25364542
      n 0602 0516263532
      o 051626353322120305
      p 0600 0516263533221203
      q 3630 3526160503122233
      r 0602 051626
      s 3616051424332202
      t 181322 0626
      u 0603122233 3632
      v 062246
      w 0612254246
      x 0236 0632
      y 0622 4610
      z 06360232
      0 030718283733221203
      1 071812 0222
      2 07182837360232
      3 07182837362515 253433221203
      4 22280434
      5 3808052534332202
      6 280603122233342505
      7 083812
      8 1506071828373625150403122233342515
      9 123437281807061535
      . 0203
      , 1301
      : 0203 0506
      ; 1301 1516
      - 0434
      + 0444 2226
      = 0333 0535
      / 0138
      \\ 0831
      ( 18060311
      ) 08161301
      [ 18080111
      ] 08181101
      { 2817160514131221
      } 0817162514130211
      | 0801
      % 0248 0708181707 3233434232
      # 1218 3238 0444 0646
      & 4207182703122244
      ' 0806
      " 0806 2826
      ! 0804 0203
      ? 07182837362524 2223
      * 1418 0735 0537
      < 360532
      > 063502
      @ 3525142333454345371605021141
      _ 0141
      ^ 061826
      ~ 04152435
      ` 0817
      $ 473818070615354443321203 2921
      \u00b0 0708181707
      \u00b1 0545 2327 0242
      \u00d7 0337 0733
      \u00b7 0405
      \u00b2 0718170515
      \u00b5 0600 0312223336
      """;

  static {
    GLYPHS.put((int) ' ', new Glyph(List.of(), 3.2));
    for (String line : SHAPES.split("\n")) {
      if (!line.isBlank()) {
        int sign = line.codePointAt(0);
        GLYPHS.put(sign, glyph(line.substring(2)));
      }
    }
  }

  private static final Glyph UNKNOWN = glyph("0208383202");

  private StrokeFont() {}

  /** The letters of a text, in order. */
  static List<Glyph> glyphs(String text) {
    List<Glyph> out = new ArrayList<>();
    Normalizer.normalize(text, Normalizer.Form.NFD)
        .codePoints()
        .filter(c -> Character.getType(c) != Character.NON_SPACING_MARK)
        .map(c -> c == 0x2013 || c == 0x2014 || c == 0x2212 ? '-' : c == 0x2019 ? '\'' : c)
        .forEach(c -> out.add(GLYPHS.getOrDefault(c, UNKNOWN)));
    return out;
  }

  /** How far a text runs in X, in units. */
  static double width(String text) {
    return glyphs(text).stream().mapToDouble(Glyph::advance).sum();
  }

  private static Glyph glyph(String shape) {
    List<double[]> strokes = new ArrayList<>();
    double widest = 0;
    for (String stroke : shape.trim().split(" ")) {
      double[] points = new double[stroke.length()];
      for (int i = 0; i < points.length; i++) {
        points[i] = stroke.charAt(i) - '0' - (i % 2 == 1 ? 2 : 0);
        widest = i % 2 == 0 ? Math.max(widest, points[i]) : widest;
      }
      strokes.add(points);
    }
    return new Glyph(List.copyOf(strokes), widest + GAP);
  }
}
