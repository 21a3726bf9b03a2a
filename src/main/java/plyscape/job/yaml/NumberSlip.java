package plyscape.job.yaml;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import plyscape.text.Numbers;

/** What people write where a plain number is wanted, and what they should have written. */
final class NumberSlip {

  private static final Pattern COMMA = Pattern.compile("([-+]?\\d+),(\\d+)");
  private static final Pattern SHARE = Pattern.compile("(\\d+(?:\\.\\d+)?)\\s*%");
  private static final Pattern FRACTION = Pattern.compile("(\\d+)/(\\d+).*");
  private static final Pattern LENGTH =
      Pattern.compile("(\\d+(?:\\.\\d+)?)\\s*(cm|m|\"|in|inch|inches)");
  private static final Pattern WITH_UNIT = Pattern.compile("([-+]?\\d+(?:\\.\\d+)?)\\s*[^\\d.]+");

  /** Longer texts are no slips, and their numbers might not be finite. */
  private static final int LONGEST = 40;

  private static final double MM_PER_INCH = 25.4;
  private static final Map<String, Double> MM_IN =
      Map.of(
          "cm",
          10.0,
          "m",
          1000.0,
          "\"",
          MM_PER_INCH,
          "in",
          MM_PER_INCH,
          "inch",
          MM_PER_INCH,
          "inches",
          MM_PER_INCH);

  private NumberSlip() {}

  /**
   * A clause for a message that begins with {@code ; }, or "".
   *
   * @param text as written
   * @param unit that the number is in, "mm" or others
   */
  static String hint(String text, String unit, boolean whole) {
    String plain = text.strip();
    if (plain.length() > LONGEST) {
      return "";
    }
    Matcher comma = COMMA.matcher(plain);
    if (comma.matches()) {
      String point = comma.group(1) + "." + comma.group(2);
      String none = comma.group(1) + comma.group(2);
      return "; decimals take a point, thousands nothing: "
          + (whole ? none : comma.group(2).length() == 3 ? point + " or " + none : point);
    }
    Matcher share = SHARE.matcher(plain);
    if (share.matches()) {
      return unit.contains("fraction")
          ? "; as a fraction that is " + Numbers.trimmed(number(share.group(1)) / 100, 6)
          : "; the number alone, not a share of something";
    }
    if (unit.equals("mm")) {
      Matcher length = LENGTH.matcher(plain);
      if (length.matches()) {
        double mm = number(length.group(1)) * MM_IN.get(length.group(2));
        return "; that is " + Numbers.trimmed(mm, 3) + " mm";
      }
      Matcher fraction = FRACTION.matcher(plain);
      if (fraction.matches() && number(fraction.group(2)) > 0) {
        double inch = number(fraction.group(1)) / number(fraction.group(2));
        return "; if that is an inch's, it is " + Numbers.trimmed(inch * MM_PER_INCH, 3) + " mm";
      }
    }
    Matcher alone = WITH_UNIT.matcher(plain);
    return alone.matches() ? "; the number alone, without a unit: " + alone.group(1) : "";
  }

  private static double number(String digits) {
    return Double.parseDouble(digits);
  }
}
