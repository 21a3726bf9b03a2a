package plyscape.terrain.tiff;

import org.geotools.api.referencing.FactoryException;
import org.geotools.referencing.CRS;
import plyscape.terrain.crs.CrsLookup;
import plyscape.terrain.crs.LinearUnit;
import plyscape.text.Template;

/**
 * Puts a projected CRS that a GeoTIFF spells out in keys (OGC 19-008r4, annex B; the meaning of the
 * projections' parameters as in their EPSG methods) together as well-known text. The bundle's own
 * way is used only for what isn't known here: it takes false eastings in feet for metres, and a
 * polar stereographic's parallel of true scale for its origin (568 km and 55 km off, against GDAL
 * 3.6.2).
 */
final class SpelledCrs {

  static final int PROJECTION = 3075;
  static final int LINEAR_UNIT = 3076;
  static final int TO_WGS_84 = 2062;
  private static final int CITATION = 1026;
  private static final int PROJECTED_CITATION = 3073;
  private static final int GEODETIC_CRS = 2048;
  private static final int ANGULAR_UNIT = 2054;
  private static final int SEMI_MAJOR = 2057;
  private static final int SEMI_MINOR = 2058;
  private static final int INVERSE_FLATTENING = 2059;
  private static final int PRIME_MERIDIAN = 2051;
  private static final int PRIME_MERIDIAN_LONGITUDE = 2061;
  private static final int PROJECTION_CODE = 3074;
  private static final int LINEAR_UNIT_SIZE = 3077;
  private static final int PARALLEL_1 = 3078;
  private static final int PARALLEL_2 = 3079;
  private static final int[] LONGITUDE = {3080, 3084, 3088, 3095};
  private static final int[] LATITUDE = {3081, 3085, 3089};
  private static final int[] EASTING = {3082, 3086, 3090};
  private static final int[] NORTHING = {3083, 3087, 3091};
  private static final int[] SCALE = {3092, 3093};
  private static final int AZIMUTH = 3094;
  private static final int POLE_LONGITUDE = 3095;
  private static final int RECTIFIED_ANGLE = 3096;

  private static final int DEGREE = 9102;
  private static final int GREENWICH = 8901;
  private static final String ESRI_TEXT = "ESRI PE String = ";

  private final GeoKeys keys;

  private SpelledCrs(GeoKeys keys) {
    this.keys = keys;
  }

  /** The CRS as text or code, or null when the keys don't spell one out that is known here. */
  static String wkt(GeoKeys keys) {
    String said = keys.text(PROJECTED_CITATION);
    if (said.contains("Mercator_Auxiliary_Sphere")) {
      return "EPSG:3857";
    }
    SpelledCrs spelled = new SpelledCrs(keys);
    String projection = spelled.projection();
    String datum = projection == null ? null : spelled.geographic();
    double metres =
        keys.reals(LINEAR_UNIT_SIZE).length == 1
            ? keys.reals(LINEAR_UNIT_SIZE)[0]
            : LinearUnit.metres(keys.code(LINEAR_UNIT, 9001), Double.NaN);
    if (datum != null && metres > 0) {
      return Template.fill(
          "PROJCS[\"%s\",%s,%s,UNIT[\"unit\",%s],AXIS[\"Easting\",EAST],AXIS[\"Northing\",NORTH]]",
          name(keys.text(CITATION).isEmpty() ? said : keys.text(CITATION)),
          datum,
          projection,
          metres);
    }
    int at = said.indexOf(ESRI_TEXT);
    return at < 0 ? null : said.substring(at + ESRI_TEXT.length());
  }

  private static String name(String citation) {
    return citation.isBlank() ? "unnamed" : citation.replaceAll("[\"\\[\\]|\\p{Cntrl}]", " ");
  }

  /** The geographic CRS below, with its shift to WGS 84; null when the keys don't give it. */
  private String geographic() {
    int code = keys.code(GEODETIC_CRS, 0);
    if (code > 0 && code < GeoKeys.USER_DEFINED) {
      CrsLookup.hushLibraries();
      try {
        return CRS.decode("EPSG:" + code, true).toWKT().replaceAll("\\s*\\R\\s*", " ");
      } catch (FactoryException e) {
        return null;
      }
    }
    double major = first(new int[] {SEMI_MAJOR}, Double.NaN);
    double flat = first(new int[] {INVERSE_FLATTENING}, Double.NaN);
    double minor = first(new int[] {SEMI_MINOR}, Double.NaN);
    if (Double.isNaN(flat) && minor > 0) {
      flat = minor == major ? 0 : major / (major - minor);
    }
    boolean greenwich = keys.code(PRIME_MERIDIAN, GREENWICH) == GREENWICH;
    double meridian = first(new int[] {PRIME_MERIDIAN_LONGITUDE}, greenwich ? 0 : Double.NaN);
    boolean known = major > 0 && flat >= 0 && Double.isFinite(meridian);
    if (!known || keys.code(ANGULAR_UNIT, DEGREE) != DEGREE) {
      return null;
    }
    double[] shift = keys.reals(TO_WGS_84);
    StringBuilder toWgs84 = new StringBuilder();
    for (int i = 0; (shift.length == 3 || shift.length == 7) && i < 7; i++) {
      toWgs84.append(i == 0 ? ",TOWGS84[" : ",").append(i < shift.length ? shift[i] : 0.0);
    }
    return Template.fill(
        "GEOGCS[\"unnamed\",DATUM[\"unnamed\",SPHEROID[\"unnamed\",%s,%s]%s],"
            + "PRIMEM[\"unnamed\",%s],UNIT[\"degree\",0.017453292519943295],"
            + "AXIS[\"Longitude\",EAST],AXIS[\"Latitude\",NORTH]]",
        major, flat, toWgs84.isEmpty() ? "" : toWgs84 + "]", meridian);
  }

  private String projection() {
    double longitude = first(LONGITUDE, 0);
    double latitude = first(LATITUDE, 0);
    double parallel = first(new int[] {PARALLEL_1}, Double.NaN);
    double second = first(new int[] {PARALLEL_2}, Double.NaN);
    double scale = first(SCALE, 1);
    boolean two = !Double.isNaN(parallel) && !Double.isNaN(second);
    return switch (keys.code(PROJECTION, 0)) {
      case 0 -> utm(keys.code(PROJECTION_CODE, 0));
      case 1 -> text("Transverse_Mercator", origin(latitude, longitude, scale));
      case 3 -> text("Hotine_Oblique_Mercator", oblique(latitude, longitude, scale));
      case 9815 -> text("Oblique_Mercator", oblique(latitude, longitude, scale));
      case 7 ->
          Double.isNaN(parallel)
              ? text("Mercator_1SP", origin(latitude, longitude, scale))
              : text(
                  "Mercator_2SP", "standard_parallel_1", parallel, "central_meridian", longitude);
      case 8 -> two ? conic("Lambert_Conformal_Conic_2SP", latitude, parallel, second) : null;
      case 9 -> text("Lambert_Conformal_Conic_1SP", origin(latitude, longitude, scale));
      case 10 -> text("Lambert_Azimuthal_Equal_Area", centre(latitude, longitude));
      case 11 -> two ? conic("Albers_Conic_Equal_Area", latitude, parallel, second) : null;
      case 12 -> text("Azimuthal_Equidistant", centre(latitude, longitude));
      case 15 -> polar(latitude, scale);
      case 14, 16 -> text("Oblique_Stereographic", origin(latitude, longitude, scale));
      case 24 -> text("Sinusoidal", "central_meridian", longitude);
      default -> null;
    };
  }

  /** The numbers of the UTM zones' projections: 16001 to 16060 north, 16101 to 16160 south. */
  private String utm(int code) {
    int zone = code > 16100 ? code - 16100 : code - 16000;
    if (zone < 1 || zone > 60) {
      return null;
    }
    double metres = LinearUnit.metres(keys.code(LINEAR_UNIT, 9001), 1);
    return "PROJECTION[\"Transverse_Mercator\"]"
        + parameters(origin(0, 6 * zone - 183, 0.9996))
        + parameters(
            "false_easting",
            500_000 / metres,
            "false_northing",
            code > 16100 ? 10_000_000 / metres : 0);
  }

  /**
   * Origin at a pole with a scale is EPSG's variant A, any other latitude is the parallel of true
   * scale, variant B.
   */
  private String polar(double latitude, double scale) {
    double longitude = first(new int[] {POLE_LONGITUDE}, first(LONGITUDE, 0));
    return Math.abs(latitude) > 89.9999
        ? text("Polar_Stereographic", origin(latitude, longitude, scale))
        : text(
            "Polar Stereographic (variant B)",
            "standard_parallel_1",
            latitude,
            "central_meridian",
            longitude);
  }

  private String conic(String name, double latitude, double parallel, double second) {
    return text(
        name,
        "latitude_of_origin",
        latitude,
        "central_meridian",
        first(LONGITUDE, 0),
        "standard_parallel_1",
        parallel,
        "standard_parallel_2",
        second);
  }

  private static Object[] origin(double latitude, double longitude, double scale) {
    return new Object[] {
      "latitude_of_origin", latitude, "central_meridian", longitude, "scale_factor", scale
    };
  }

  private static Object[] centre(double latitude, double longitude) {
    return new Object[] {"latitude_of_center", latitude, "longitude_of_center", longitude};
  }

  private Object[] oblique(double latitude, double longitude, double scale) {
    double azimuth = first(new int[] {AZIMUTH}, 0);
    return new Object[] {
      "latitude_of_center",
      latitude,
      "longitude_of_center",
      longitude,
      "azimuth",
      azimuth,
      "rectified_grid_angle",
      first(new int[] {RECTIFIED_ANGLE}, azimuth),
      "scale_factor",
      scale
    };
  }

  private String text(String name, Object... parameters) {
    return "PROJECTION[\""
        + name
        + "\"]"
        + parameters(parameters)
        + parameters("false_easting", first(EASTING, 0), "false_northing", first(NORTHING, 0));
  }

  private static String parameters(Object... namesAndValues) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      out.append(Template.fill(",PARAMETER[\"%s\",%s]", namesAndValues[i], namesAndValues[i + 1]));
    }
    return out.toString();
  }

  /** The number of the first of some keys that is there. */
  private double first(int[] alternatives, double otherwise) {
    for (int key : alternatives) {
      double[] found = keys.reals(key);
      if (found.length > 0) {
        return found[0];
      }
      if (keys.code(key, -1) >= 0) {
        // Whole numbers may stand in the table itself.
        return keys.code(key, 0);
      }
    }
    return otherwise;
  }
}
