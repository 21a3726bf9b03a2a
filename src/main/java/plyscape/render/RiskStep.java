package plyscape.render;

import java.util.Locale;

/** Steps in which the risk of a wrong colour is shown, from sure to unsure. */
public enum RiskStep {
  TINY(1e-6, 0x266e46, "up to 1 in 1 000 000"),
  SMALL(1e-4, 0x96be5a, "up to 1 in 10 000"),
  SOME(1e-3, 0xf0d25a, "up to 1 in 1 000"),
  LARGE(1e-2, 0xeb8c32, "up to 1 in 100"),
  MORE(1, 0xbe1e28, "more than 1 in 100");

  private final double most;
  private final int rgb;
  private final String words;

  RiskStep(double most, int rgb, String words) {
    this.most = most;
    this.rgb = rgb;
    this.words = words;
  }

  /** The step of a risk from 0 to 1. */
  public static RiskStep of(double risk) {
    for (RiskStep step : values()) {
      if (risk <= step.most) {
        return step;
      }
    }
    return MORE;
  }

  /** The greatest risk in it. */
  public double most() {
    return most;
  }

  /** Its colour on maps, 0xRRGGBB. */
  public int rgb() {
    return rgb;
  }

  /** The same as {@code #rrggbb}. */
  public String colour() {
    return String.format(Locale.ROOT, "#%06x", rgb);
  }

  /** For people. */
  public String words() {
    return words;
  }
}
