package plyscape.layup;

/**
 * How tolerances are added up: {@code RSS} root of the sum of squares, {@code WORST} the plain sum.
 */
public enum Method {
  RSS,
  WORST
}
