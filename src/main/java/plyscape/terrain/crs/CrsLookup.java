package plyscape.terrain.crs;

import java.util.Locale;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.GeographicCRS;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.referencing.CRS;
import org.geotools.referencing.crs.DefaultGeographicCRS;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.grid.UtmZone;

/**
 * Answers questions about coordinate reference systems through GeoTools, and avoids asking where it
 * can: opening the EPSG register takes more than a second, as long as all the rest of reading a
 * terrain.
 */
public final class CrsLookup {

  /** Kept, since the logging package holds loggers weakly and would forget the level. */
  private static final Logger[] HUSHED = {
    hush("org.geotools"), hush("it.geosolutions"), hush("javax.media.jai"), hush("java.util.prefs")
  };

  /** Longitude and latitude on WGS 84, here always in this order. */
  public static final String WGS_84 = "EPSG:4326";

  private CrsLookup() {}

  /**
   * Keeps the libraries from logging to the console: what they have to say comes back as
   * exceptions.
   */
  public static void hushLibraries() {
    for (Logger logger : HUSHED) {
      logger.setLevel(Level.OFF);
    }
  }

  private static Logger hush(String name) {
    Logger logger = Logger.getLogger(name);
    logger.setLevel(Level.OFF);
    return logger;
  }

  /** A CRS as people write it, as a code or WKT: a bare number, WGS84 and CRS84 are known too. */
  public static String asId(String written) {
    String text = written.strip();
    if (text.matches("\\d{4,6}")) {
      return "EPSG:" + text;
    }
    return text.matches("(?i)WGS ?_?84|(OGC:)?CRS84")
        ? WGS_84
        : text.matches("(?i)EPSG:.*")
            ? text.toUpperCase(Locale.ROOT)
            : ProjectionFile.shortest(text);
  }

  /** What the CRS of a code or WKT is; the place is blamed when there is no such CRS. */
  public static GroundCrs describe(String id, Place place) {
    if (metricCode(id)) {
      return new GroundCrs(id, GroundCrs.Kind.PROJECTED, 1);
    }
    if (id.equals(WGS_84)) {
      return new GroundCrs(id, GroundCrs.Kind.GEOGRAPHIC, 1);
    }
    return describe(id, decode(id, place), place);
  }

  /** The same for a CRS at hand. */
  public static GroundCrs describe(String id, CoordinateReferenceSystem crs, Place place) {
    CoordinateReferenceSystem flat = CRS.getHorizontalCRS(crs);
    if (flat instanceof ProjectedCRS) {
      var unit =
          flat.getCoordinateSystem()
              .getAxis(0)
              .getUnit()
              .asType(javax.measure.quantity.Length.class);
      double metres = unit.getConverterTo(tech.units.indriya.unit.Units.METRE).convert(1.0);
      return new GroundCrs(id, GroundCrs.Kind.PROJECTED, metres);
    }
    if (flat instanceof GeographicCRS) {
      return new GroundCrs(id, GroundCrs.Kind.GEOGRAPHIC, 1);
    }
    throw new InputFault(
        place,
        "the CRS " + name(crs) + " is neither projected nor geographic",
        "use a raster in a map projection");
  }

  /**
   * Maps points of one CRS to another, each given by its code or WKT, x east and y north, with the
   * datum shift that GeoTools knows ({@link CrsMaps}).
   *
   * @throws InputFault at the place when one is unknown or there is no way
   */
  public static PlaneMap between(String from, String to, Place place) {
    if (from.equals(to)) {
      return PlaneMap.same();
    }
    UtmZone fromZone = UtmZone.of(from);
    UtmZone toZone = UtmZone.of(to);
    if (from.equals(WGS_84) && toZone != null) {
      return toZone::fromDegrees;
    }
    if (fromZone != null && to.equals(WGS_84)) {
      return fromZone::toDegrees;
    }
    CoordinateReferenceSystem source = decode(from, place);
    CoordinateReferenceSystem target = decode(to, place);
    try {
      return CrsMaps.between(source, target);
    } catch (FactoryException | RuntimeException e) {
      throw new InputFault(
          place,
          "can't convert from " + label(from) + " to " + label(to),
          "save the data in a CRS with an EPSG code, best both in the same",
          e);
    }
  }

  /**
   * Tells when the Earth of a CRS is a sphere, so that its places can't be told from each other on
   * WGS 84 without an assumption.
   *
   * @param where whose CRS it is, a file's name
   */
  public static void tellSphere(String id, Place place, String where, Warnings warnings) {
    if (!id.isEmpty()
        && !id.equals(WGS_84)
        && !metricCode(id)
        && CrsMaps.onSphere(decode(id, place))) {
      warnings.add(
          "crs-sphere",
          "in "
              + label(id)
              + " the Earth is a sphere; its latitudes are taken as those of WGS 84, as is usual."
              + " If they are meant from the Earth's centre, places are off by up to 21 km: then"
              + " convert it to a CRS on WGS 84 first",
          where);
    }
  }

  /**
   * How far off places may be that are brought from one CRS to another, because the exact way needs
   * a grid that isn't at hand; metres, 0 where less than one is known of.
   */
  public static double shiftErrorM(String from, String to, Place place) {
    if (from.equals(to) || from.isEmpty() || to.isEmpty() || modern(from) && modern(to)) {
      return 0;
    }
    return DatumShift.errorM(CrsMaps.datum(decode(from, place)), CrsMaps.datum(decode(to, place)));
  }

  private static boolean modern(String id) {
    return id.equals(WGS_84) || metricCode(id);
  }

  static CoordinateReferenceSystem decode(String id, Place place) {
    if (id.equals(WGS_84)) {
      return DefaultGeographicCRS.WGS84;
    }
    try {
      return id.contains("[") ? CRS.parseWKT(DatumShift.completed(id)) : CRS.decode(id, true);
    } catch (FactoryException | RuntimeException e) {
      // Of a parameter out of range the library complains by an unchecked exception.
      throw new InputFault(
          place,
          "unknown CRS '" + (id.length() > 60 ? id.substring(0, 60) + "..." : id) + "'",
          "give an EPSG code such as EPSG:32632",
          e);
    }
  }

  /** A CRS for people: its code, or of WKT the name, or when that says nothing the projection's. */
  public static String label(String id) {
    int open = id.indexOf('[');
    if (open < 0) {
      return id;
    }
    String[] quoted = id.substring(open).split("\"", 3);
    String name = quoted.length > 1 ? quoted[1] : "";
    if (!name.isBlank() && !name.matches("(?i)unknown|unnamed|user.defined")) {
      return name;
    }
    int projection = id.indexOf("PROJECTION[\"");
    return projection < 0
        ? "unnamed"
        : "unnamed " + id.substring(projection + 12).split("\"", 2)[0];
  }

  private static String name(CoordinateReferenceSystem crs) {
    return crs.getName().getCode();
  }

  /**
   * Whether a code is one of the common metric grids, by number alone (EPSG register, ranges of UTM
   * zones).
   */
  public static boolean metricCode(String id) {
    if (!id.matches("EPSG:\\d{4,5}")) {
      return false;
    }
    int code = Integer.parseInt(id.substring(5));
    return code > 32600 && code <= 32660 // WGS 84 / UTM north
        || code > 32700 && code <= 32760 // WGS 84 / UTM south
        || code >= 25828 && code <= 25838 // ETRS89 / UTM
        || code >= 26901 && code <= 26923; // NAD83 / UTM
  }
}
