package plyscape.zones;

import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.TransformException;
import org.geotools.referencing.CRS;
import org.geotools.referencing.crs.DefaultGeographicCRS;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.grid.UtmZone;

/**
 * Conversions between CRSs, x east and y north. The commonest, WGS 84 to one of its UTM zones, is
 * plain arithmetic; GeoTools and its register, which take a second to open, are asked for the
 * others only.
 */
final class CrsConversion {

  private CrsConversion() {}

  /** From one CRS to another; the place is blamed when there is none. */
  static PointMap between(String from, String to, Place place) {
    if (from.equals(to)) {
      return PointMap.same();
    }
    UtmZone fromZone = UtmZone.of(from);
    UtmZone toZone = UtmZone.of(to);
    if (from.equals(GroundMap.LONGITUDE_LATITUDE) && toZone != null) {
      return toZone::fromDegrees;
    }
    if (to.equals(GroundMap.LONGITUDE_LATITUDE) && fromZone != null) {
      return fromZone::toDegrees;
    }
    return Register.between(from, to, place);
  }

  /** Apart, so that GeoTools' classes are loaded only when they are needed. */
  private static final class Register {

    static PointMap between(String from, String to, Place place) {
      CoordinateReferenceSystem source = decode(from, place);
      CoordinateReferenceSystem target = decode(to, place);
      try {
        if (CRS.equalsIgnoreMetadata(source, target)) {
          return PointMap.same();
        }
        MathTransform transform = CRS.findMathTransform(source, target, true);
        return (xy, count) -> map(transform, xy, count);
      } catch (FactoryException | RuntimeException e) {
        throw new InputFault(
            place,
            "can't convert from " + from + " to " + to,
            "save the map in the terrain's CRS",
            e);
      }
    }

    private static CoordinateReferenceSystem decode(String id, Place place) {
      if (id.equals(GroundMap.LONGITUDE_LATITUDE)) {
        return DefaultGeographicCRS.WGS84;
      }
      try {
        return id.contains("[") ? CRS.parseWKT(id) : CRS.decode(id, true);
      } catch (FactoryException | RuntimeException e) {
        // Of a parameter out of range the library complains by an unchecked exception.
        throw new InputFault(
            place, "unknown CRS \"" + id + "\"", "name one by its code, such as EPSG:32632", e);
      }
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
}
