package plyscape.terrain.crs;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.GeographicCRS;
import org.geotools.api.referencing.datum.GeodeticDatum;
import org.geotools.referencing.CRS;
import org.geotools.referencing.datum.BursaWolfParameters;
import org.geotools.referencing.datum.DefaultGeodeticDatum;

/**
 * What is known of the way from older datums to WGS 84. Exact ways need grids that the library
 * doesn't bring; without one a shift of three or seven numbers is taken, which is off by metres.
 * Texts as one large maker of map software writes them name a datum but no shift at all, which left
 * places off by up to some hundred metres: they are given the shift of the EPSG register.
 */
final class DatumShift {

  /**
   * A datum.
   *
   * @param geographic EPSG code of its longitudes and latitudes
   * @param errorM how far off places may be after the shift without a grid, metres: the accuracy
   *     that the EPSG register gives for the widest of its shifts, from memory; NAD27 was seen 14.8
   *     m off at 47 N 100 W against PROJ 9.1.1 with its grids
   */
  private record Known(int geographic, double errorM) {}

  private static final Map<String, Known> DATUMS = new HashMap<>();

  /** Names as {@link #plain} leaves them: the register's first, then those of texts. */
  private static void known(int geographic, double errorM, String... names) {
    for (String name : names) {
      DATUMS.put(name, new Known(geographic, errorM));
    }
  }

  static {
    known(4277, 5, "ordnance survey of great britain 1936", "osgb 1936");
    known(4267, 15, "north american datum 1927", "north american 1927");
    known(4230, 10, "european datum 1950", "european 1950");
    known(4314, 5, "deutsches hauptdreiecksnetz");
    known(4312, 5, "militar geographische institut", "mgi");
    known(4149, 2, "ch1903");
    known(4156, 6, "system of the unified trigonometrical cadastral network", "s jtsk");
    known(4284, 10, "pulkovo 1942");
    known(4289, 1, "amersfoort");
    known(4275, 2, "nouvelle triangulation francaise", "ntf");
    known(4265, 5, "monte mario");
    known(4313, 1, "reseau national belge 1972", "belge 1972");
    known(4124, 1, "rikets koordinatsystem 1990", "rt 1990");
    known(4299, 1, "tm65");
    known(4301, 10, "tokyo");
    known(4207, 5, "lisbon 1937", "lisbon");
    known(4274, 2, "datum 73");
    known(4237, 2, "hungarian datum 1972", "hungarian 1972");
    known(4272, 4, "new zealand geodetic datum 1949", "new zealand 1949");
    known(4202, 5, "australian geodetic datum 1966", "australian 1966");
    known(4203, 5, "australian geodetic datum 1984", "australian 1984");
    known(4209, 20, "arc 1950");
    known(4222, 10, "cape");
  }

  /** Datums that agree with WGS 84 within a metre or two, as the register names them. */
  private static final Pattern NEAR_WGS_84 =
      Pattern.compile(
          "World Geodetic System 1984.*|European Terrestrial Reference System"
              + " 1989.*|SWEREF99|Geocentric Datum of Australia 1994|New Zealand Geodetic Datum"
              + " 2000|Hartebeesthoek94");

  /** A datum's name and its ellipsoid, with nothing behind it that could be a shift. */
  private static final Pattern BARE =
      Pattern.compile(
          "DATUM\\[\\s*\"([^\"]*)\"\\s*,\\s*(?:SPHEROID|ELLIPSOID)\\[[^\\[\\]]*"
              + "(?:,\\s*AUTHORITY\\[[^\\]]*\\])?\\s*\\](?!\\s*,\\s*TOWGS84)");

  private DatumShift() {}

  /** A text with the shift of its datum put in where it has none and the datum is known. */
  static String completed(String wkt) {
    Matcher bare = BARE.matcher(wkt);
    if (!wkt.contains("SPHEROID") || wkt.contains("TOWGS84") || !bare.find()) {
      return wkt;
    }
    Known known = DATUMS.get(plain(bare.group(1)));
    if (known == null) {
      return wkt;
    }
    try {
      GeographicCRS crs = (GeographicCRS) CRS.decode("EPSG:" + known.geographic(), true);
      for (BursaWolfParameters shift :
          ((DefaultGeodeticDatum) crs.getDatum()).getBursaWolfParameters()) {
        if (NEAR_WGS_84.matcher(shift.targetDatum.getName().getCode()).matches()) {
          return wkt.substring(0, bare.end()) + text(shift) + wkt.substring(bare.end());
        }
      }
      return wkt;
    } catch (FactoryException e) {
      return wkt; // without a register, as well as it goes
    }
  }

  private static String text(BursaWolfParameters s) {
    return String.format(
        Locale.ROOT, ",TOWGS84[%s,%s,%s,%s,%s,%s,%s]", s.dx, s.dy, s.dz, s.ex, s.ey, s.ez, s.ppm);
  }

  /**
   * How far off places may be on the way from one datum to another, metres; 0 where less than one
   * is known of.
   */
  static double errorM(GeodeticDatum from, GeodeticDatum to) {
    Known one = from == null ? null : DATUMS.get(plain(from.getName().getCode()));
    Known other = to == null ? null : DATUMS.get(plain(to.getName().getCode()));
    boolean same = one != null && one.equals(other);
    return same ? 0 : Math.max(one == null ? 0 : one.errorM(), other == null ? 0 : other.errorM());
  }

  /** A datum's name as all that write it agree on it. */
  private static String plain(String name) {
    return name.toLowerCase(Locale.ROOT)
        .replaceFirst("^d_", "")
        .replaceAll("[^a-z0-9+]+", " ")
        .strip();
  }
}
