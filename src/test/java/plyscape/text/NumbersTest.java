package plyscape.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

class NumbersTest {

  @Test
  void fixed_writesEveryPlaceAndNoMinusZero() {
    assertEquals("0.500", Numbers.fixed(0.5, 3));
    assertEquals("-12.345", Numbers.fixed(-12.345, 3));
    assertEquals("0.000", Numbers.fixed(-0.0, 3));
    assertEquals("0.000", Numbers.fixed(-0.0004, 3));
    assertEquals("-0.001", Numbers.fixed(-0.0006, 3));
    assertEquals("1", Numbers.fixed(0.5, 0));
    assertEquals("0", Numbers.fixed(0.49999999999999994, 0));
  }

  @Test
  void trimmed_dropsTrailingZerosOnlyBehindThePoint() {
    assertEquals("0.5", Numbers.trimmed(0.5, 3));
    assertEquals("240", Numbers.trimmed(240, 3));
    assertEquals("0", Numbers.trimmed(-0.0001, 3));
    assertEquals("100000000000000000000", Numbers.trimmed(1e20, 2));
    assertEquals("100000000000000000000.00", Numbers.fixed(1e20, 2));
  }

  @Test
  void neverWritesAnExponentOrTheLocalesComma() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      assertEquals("0.0000001", Numbers.trimmed(1e-7, 9));
      assertEquals("12345678.9", Numbers.trimmed(12345678.9, 1));
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void notFinite_isRefused() {
    assertThrows(IllegalArgumentException.class, () -> Numbers.fixed(Double.NaN, 2));
    assertThrows(IllegalArgumentException.class, () -> Numbers.fixed(Double.POSITIVE_INFINITY, 2));
  }

  /**
   * Against the exact decimal arithmetic of the JDK: half a unit of the last place away at most,
   * ties aside equal.
   */
  @Test
  void agreesWithExactDecimals_onSeededRandomValues() {
    Random random = new Random(7);
    for (int i = 0; i < 20_000; i++) {
      double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(14) - 4);
      int places = random.nextInt(7);
      BigDecimal exact = new BigDecimal(value);
      BigDecimal ours = new BigDecimal(Numbers.fixed(value, places));
      BigDecimal half = new BigDecimal("0.5").movePointLeft(places);
      BigDecimal slack = exact.abs().movePointLeft(15);
      int shown = i;
      assertEquals(places, ours.scale(), () -> "case " + shown);
      assertEquals(
          -1,
          ours.subtract(exact).abs().compareTo(half.add(slack).add(BigDecimal.valueOf(1, 18))),
          "case " + i);
      assertEquals(0, ours.compareTo(ours.setScale(places, RoundingMode.HALF_UP)));
    }
  }
}
