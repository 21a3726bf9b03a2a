package plyscape.machine;

/** What the records of this package hold themselves to when they are made. */
final class Check {

  private Check() {}

  /** A length, speed or the like that can't be nothing. */
  static void positive(String what, double value) {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(what + " must be positive: " + value);
    }
  }

  /** A length, speed or the like that may be 0, where 0 often stands for "not given". */
  static void notNegative(String what, double value) {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(what + " must not be negative: " + value);
    }
  }
}
