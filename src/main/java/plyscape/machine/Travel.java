package plyscape.machine;

/** Spans that the axes may use, the zero point included, mm. Immutable. */
public record Travel(double xMm, double yMm, double zMm) {

  /** A small router. */
  public static final Travel USUAL = new Travel(300, 300, 80);

  /** Checks that all are positive. */
  public Travel {
    Check.positive("travel of X", xMm);
    Check.positive("travel of Y", yMm);
    Check.positive("travel of Z", zMm);
  }
}
