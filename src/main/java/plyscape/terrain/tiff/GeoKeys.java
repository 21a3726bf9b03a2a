package plyscape.terrain.tiff;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.coverage.grid.io.imageio.geotiff.GeoTiffIIOMetadataDecoder;
import org.geotools.coverage.grid.io.imageio.geotiff.GeoTiffMetadata2CRSAdapter;
import org.geotools.util.factory.Hints;
import plyscape.fault.InputFault;
import plyscape.terrain.crs.CrsLookup;
import plyscape.terrain.crs.GroundCrs;
import plyscape.terrain.crs.LinearUnit;
import plyscape.terrain.raster.Affine;

/**
 * What the GeoTIFF keys (OGC 19-008r4) say of the place of a raster: its cells on the ground, and
 * its CRS. A CRS given by code is taken by its code; one that is spelled out in keys is put
 * together by GeoTools.
 */
final class GeoKeys {

  private static final int MODEL_TYPE = 1024;
  private static final int RASTER_TYPE = 1025;
  private static final int GEODETIC_CRS = 2048;
  private static final int PROJECTED_CRS = 3072;
  private static final int VERTICAL_CRS = 4096;
  private static final int VERTICAL_UNITS = 4099;
  private static final int PIXEL_IS_POINT = 2;
  static final int USER_DEFINED = 32767;

  private final TiffTags tags;
  private final Map<Integer, Integer> codes = new TreeMap<>();
  private final Map<Integer, double[]> reals = new TreeMap<>();
  private final Map<Integer, String> texts = new TreeMap<>();

  GeoKeys(TiffTags tags) {
    this.tags = tags;
    double[] directory = tags.numbers(TiffTags.GEO_KEYS);
    double[] doubles = tags.numbers(TiffTags.GEO_DOUBLES);
    String text = tags.text(TiffTags.GEO_TEXT);
    for (int i = 4; i + 3 < directory.length; i += 4) {
      int key = (int) directory[i];
      int count = (int) directory[i + 2];
      int at = (int) directory[i + 3];
      if (directory[i + 1] == 0) {
        codes.put(key, at);
      } else if (directory[i + 1] == TiffTags.GEO_DOUBLES) {
        int from = Math.min(at, doubles.length);
        reals.put(key, Arrays.copyOfRange(doubles, from, Math.min(from + count, doubles.length)));
      } else if (directory[i + 1] == TiffTags.GEO_TEXT) {
        int from = Math.min(at, text.length());
        String said = text.substring(from, Math.min(from + count, text.length()));
        texts.put(key, said.replaceAll("\\|+\\s*$", ""));
      }
    }
  }

  /** A key's code, or another number when the key is absent. */
  int code(int key, int otherwise) {
    return codes.getOrDefault(key, otherwise);
  }

  /** The numbers of a key; none when it is absent. */
  double[] reals(int key) {
    return reals.getOrDefault(key, new double[0]);
  }

  /** The text of a key; "" when it is absent. */
  String text(int key) {
    return texts.getOrDefault(key, "");
  }

  /** Whether the keys name the unit of elevations. */
  boolean verticalUnitStated() {
    int unit = code(VERTICAL_UNITS, 0);
    return verticalMetres() != 1 || !Double.isNaN(LinearUnit.metres(unit, Double.NaN));
  }

  /**
   * Metres in the unit of elevations that the keys name, by a unit or a vertical CRS; 1 when they
   * name none.
   */
  double verticalMetres() {
    int unit = code(VERTICAL_UNITS, 0);
    return unit != 0 && unit != USER_DEFINED
        ? LinearUnit.metres(unit, 1)
        : LinearUnit.ofHeights(code(VERTICAL_CRS, 0));
  }

  /** Raster to ground; null without a georeference. */
  Affine toGround() {
    Affine cornerOrCentre = transformation();
    if (cornerOrCentre == null) {
      return null;
    }
    boolean point = code(RASTER_TYPE, 1) == PIXEL_IS_POINT;
    return point ? cornerOrCentre.shifted(-0.5, -0.5) : cornerOrCentre;
  }

  private Affine transformation() {
    try {
      double[] m = tags.numbers(TiffTags.TRANSFORMATION);
      if (m.length >= 8) {
        return new Affine(m[3], m[0], m[1], m[7], m[4], m[5]);
      }
      double[] tie = tags.numbers(TiffTags.TIE_POINT);
      double[] scale = tags.numbers(TiffTags.PIXEL_SCALE);
      if (tie.length >= 6 && scale.length >= 2) {
        return new Affine(
            tie[3] - tie[0] * scale[0], scale[0], 0, tie[4] + tie[1] * scale[1], 0, -scale[1]);
      }
      if (tie.length >= 18) {
        throw new InputFault(
            tags.place(),
            "it is placed by " + tie.length / 6 + " ground control points only",
            "warp it to a map projection first");
      }
      return null;
    } catch (IllegalArgumentException e) {
      throw new InputFault(
          tags.place(), "its georeference gives " + e.getMessage(), "mend the file's tags", e);
    }
  }

  /** The CRS that the keys give, or none. */
  GroundCrs crs(Path file) {
    int projected = code(PROJECTED_CRS, 0);
    int geodetic = code(GEODETIC_CRS, 0);
    int model = code(MODEL_TYPE, projected > 0 ? 1 : geodetic > 0 ? 2 : 0);
    int code = model == 1 ? projected : model == 2 ? geodetic : 0;
    String wkt = SpelledCrs.wkt(this);
    if (model == USER_DEFINED && wkt != null) {
      return CrsLookup.describe(wkt, tags.place());
    }
    if (model == 0 || model == USER_DEFINED) {
      double metres = LinearUnit.metres(code(SpelledCrs.LINEAR_UNIT, 0), 1);
      return new GroundCrs("", GroundCrs.Kind.NONE, metres);
    }
    if (code > 0 && code < USER_DEFINED) {
      return CrsLookup.describe("EPSG:" + code, tags.place());
    }
    if (model != 1 && model != 2) {
      throw new InputFault(
          tags.place(),
          "its coordinates are geocentric",
          "use a raster in a map projection or in degrees");
    }
    return wkt != null ? CrsLookup.describe(wkt, tags.place()) : spelledOut(file);
  }

  /** One line of WKT, with the datum shift that the keys give: GeoTools leaves it out. */
  private String withShift(String wkt) {
    double[] shift = reals(SpelledCrs.TO_WGS_84);
    String line = wkt.replaceAll("\\s*\\R\\s*", " ");
    if (shift.length != 3 && shift.length != 7 || line.contains("TOWGS84")) {
      return line;
    }
    StringBuilder out = new StringBuilder("TOWGS84[");
    for (int i = 0; i < 7; i++) {
      out.append(i > 0 ? "," : "").append(i < shift.length ? shift[i] : 0.0);
    }
    // After the SPHEROID, brackets of its AUTHORITY included.
    return line.replaceFirst(
        "(SPHEROID\\[[^\\[\\]]*(?:\\[[^\\]]*\\])?\\s*\\])", "$1," + out.append(']'));
  }

  private GroundCrs spelledOut(Path file) {
    CrsLookup.hushLibraries();
    try {
      Hints hints = new Hints(Hints.FORCE_LONGITUDE_FIRST_AXIS_ORDER, true);
      CoordinateReferenceSystem crs =
          new GeoTiffMetadata2CRSAdapter(hints)
              .createCoordinateSystem(new GeoTiffIIOMetadataDecoder(TiffLibrary.metadata(file)));
      return crs == null
          ? GroundCrs.NONE
          : CrsLookup.describe(withShift(crs.toWKT()), crs, tags.place());
    } catch (InputFault e) {
      throw e;
    } catch (Exception e) {
      throw new InputFault(
          tags.place(),
          "the CRS spelled out in its keys isn't understood (projection "
              + code(SpelledCrs.PROJECTION, 0)
              + ")",
          "convert it to a CRS with an EPSG code, or set terrain.crs",
          e);
    }
  }
}
