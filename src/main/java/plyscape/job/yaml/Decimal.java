package plyscape.job.yaml;

import java.util.regex.Pattern;

/**
 * Decimal numbers as people write them: {@code 12}, {@code -0.5}, {@code .5}, {@code 1e3}. No
 * octal, hex, or base 60.
 */
public final class Decimal {

  private static final Pattern FORM =
      Pattern.compile("[-+]?(\\d+\\.?\\d*|\\.\\d+)([eE][-+]?\\d{1,3})?");

  private static final int LONGEST = 60;

  private Decimal() {}

  /** The value, or null when the text isn't a finite decimal number. */
  public static Double parse(String text) {
    if (text.length() > LONGEST || !FORM.matcher(text).matches()) {
      return null;
    }
    double value = Double.parseDouble(text);
    return Double.isFinite(value) ? value : null;
  }
}
