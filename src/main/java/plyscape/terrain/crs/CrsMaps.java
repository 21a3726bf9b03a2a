package plyscape.terrain.crs;

import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.GeographicCRS;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.datum.GeodeticDatum;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.TransformException;
import org.geotools.referencing.CRS;
import org.geotools.referencing.crs.DefaultGeographicCRS;
import org.geotools.referencing.cs.DefaultEllipsoidalCS;
import org.geotools.referencing.datum.DefaultGeodeticDatum;

/**
 * Conversions between CRSs by GeoTools, with the datum shift that it knows.
 *
 * <p>But for CRSs on a sphere: between a sphere and an ellipsoid it goes through the Earth's
 * centre, which moves places by up to 21 km (0.19 degrees at 45 degrees). Data on a sphere come
 * from projects that took latitudes on WGS 84 as if they were the sphere's, and map programs take
 * them back the same way (checked against GDAL 3.6.2 with PROJ 9.1.1); so does this.
 */
final class CrsMaps {

  private CrsMaps() {}

  /**
   * From one CRS to another, x east and y north in both.
   *
   * @throws FactoryException when there is no way
   */
  static PlaneMap between(CoordinateReferenceSystem source, CoordinateReferenceSystem target)
      throws FactoryException {
    if (CRS.equalsIgnoreMetadata(source, target)) {
      return PlaneMap.same();
    }
    if (!onSphere(source) && !onSphere(target)) {
      return plain(source, target);
    }
    PlaneMap toDegrees = plain(source, degrees(source));
    PlaneMap fromDegrees = plain(degrees(target), target);
    return (xy, count) -> {
      toDegrees.map(xy, count);
      fromDegrees.map(xy, count);
    };
  }

  /** Whether latitudes of a CRS are those of a sphere that isn't placed in the Earth by a shift. */
  static boolean onSphere(CoordinateReferenceSystem crs) {
    GeodeticDatum datum = datum(crs);
    return datum != null
        && datum.getEllipsoid().isSphere()
        && datum.getPrimeMeridian().getGreenwichLongitude() == 0
        && (!(datum instanceof DefaultGeodeticDatum own)
            || own.getBursaWolfParameters().length == 0);
  }

  /** The datum of a CRS, or null when it has none. */
  static GeodeticDatum datum(CoordinateReferenceSystem crs) {
    CoordinateReferenceSystem flat = CRS.getHorizontalCRS(crs);
    return flat instanceof ProjectedCRS projected
        ? projected.getDatum()
        : flat instanceof GeographicCRS geographic ? geographic.getDatum() : null;
  }

  /** Longitude and latitude: on the CRS's own sphere, or on WGS 84. */
  private static CoordinateReferenceSystem degrees(CoordinateReferenceSystem crs) {
    return onSphere(crs)
        ? new DefaultGeographicCRS("sphere", datum(crs), DefaultEllipsoidalCS.GEODETIC_2D)
        : DefaultGeographicCRS.WGS84;
  }

  private static PlaneMap plain(CoordinateReferenceSystem source, CoordinateReferenceSystem target)
      throws FactoryException {
    MathTransform transform = CRS.findMathTransform(source, target, true);
    return (xy, count) -> map(transform, xy, count);
  }

  private static void map(MathTransform transform, double[] xy, int count) {
    try {
      transform.transform(xy, 0, xy, 0, count);
    } catch (TransformException | IllegalArgumentException whole) {
      // Some point is beyond the projection: map one by one, so that only those are lost.
      for (int i = 0; i < count; i++) {
        try {
          transform.transform(xy, 2 * i, xy, 2 * i, 1);
        } catch (TransformException | IllegalArgumentException one) {
          xy[2 * i] = Double.NaN;
          xy[2 * i + 1] = Double.NaN;
        }
      }
    }
  }
}
