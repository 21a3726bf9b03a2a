package plyscape.terrain.crs;

import java.util.Locale;

/** Units of length by their numbers in the EPSG register, as GeoTIFF keys give them. */
public final class LinearUnit {

  private static final double FOOT = 0.3048;
  private static final double US_SURVEY_FOOT = 1200.0 / 3937;

  private LinearUnit() {}

  /** Metres in a unit; another number when the code isn't one of the common ones. */
  public static double metres(int code, double otherwise) {
    return switch (code) {
      case 9001 -> 1;
      case 9002 -> FOOT;
      case 9003 -> US_SURVEY_FOOT;
      case 9005 -> 0.3047972654; // Clarke's foot
      case 9036 -> 1000;
      case 1025 -> 0.001;
      case 1033 -> 0.01;
      default -> otherwise;
    };
  }

  /** Metres in a unit by its name as files write it; NaN when it isn't known. */
  public static double named(String name) {
    return switch (name.strip().toLowerCase(Locale.ROOT)) {
      case "", "m", "metre", "meter", "metres", "meters" -> 1;
      case "ft", "foot", "feet", "international foot", "foot (international)" -> FOOT;
      case "us-ft", "us_ft", "usft", "us survey foot", "foot_us", "sft", "ftus", "us-foot" ->
          US_SURVEY_FOOT;
      case "mm", "millimetre", "millimeter" -> 0.001;
      case "cm", "centimetre", "centimeter" -> 0.01;
      case "dm", "decimetre", "decimeter" -> 0.1;
      case "km", "kilometre", "kilometer" -> 1000;
      default -> Double.NaN;
    };
  }

  /**
   * Metres in the unit of a vertical CRS, by its EPSG code: all heights of the register (v10.076)
   * that are in feet; 1 for any other.
   */
  public static double ofHeights(int verticalCrs) {
    return switch (verticalCrs) {
      case 5702, 6360, 8052 -> US_SURVEY_FOOT; // NGVD29, NAVD88, mean sea level
      case 6130, 6131, 6132, 8050, 8228 -> FOOT; // Cayman Islands, mean sea level, NAVD88
      case 5754 -> 0.3048007491; // Poolbeg
      default -> 1;
    };
  }
}
