package plyscape.planner;

import java.util.Locale;

/** Top maps of panels of some 24 x 20 mm that don't lie flat. */
final class MadeTops {

  /** Four scattered readings, 0.5 mm between the lowest and the highest. */
  static final String FEW = "x,y,z\n1,2,0.1\n25,0,-0.2\n9,21,0.3\n14,8,0\n";

  private MadeTops() {}

  /** A grid: 0.4 mm up and down within 12 mm. */
  static String steep() {
    StringBuilder out = new StringBuilder("x,y,z\n");
    for (int y = 0; y <= 20; y += 5) {
      for (int x = 0; x <= 24; x += 4) {
        out.append(
            String.format(Locale.ROOT, "%d,%d,%.3f\n", x, y, 0.2 * Math.cos(x * Math.PI / 12)));
      }
    }
    return out.toString();
  }
}
