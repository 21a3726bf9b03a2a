package plyscape.text;

/** Times as people say them, the same in every output. */
public final class Durations {

  private Durations() {}

  /** {@code 42 s}, {@code 12 min 5 s}, {@code 3 h 20 min}. */
  public static String text(double seconds) {
    long s = Math.round(seconds);
    if (s < 60) {
      return s + " s";
    }
    if (s < 3600) {
      return s / 60 + " min" + (s % 60 == 0 ? "" : " " + s % 60 + " s");
    }
    long minutes = Math.round(seconds / 60);
    return minutes / 60 + " h" + (minutes % 60 == 0 ? "" : " " + minutes % 60 + " min");
  }
}
