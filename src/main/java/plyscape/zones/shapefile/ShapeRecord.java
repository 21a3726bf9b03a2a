package plyscape.zones.shapefile;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import plyscape.zones.map.MapShapes;
import plyscape.zones.map.RingNesting;

/**
 * One shape. Heights and measures (types above 10 and 20) stand behind x and y and are passed over.
 * Which rings are holes goes by where they lie; the direction in which they run says the same in
 * files that keep the rules.
 */
final class ShapeRecord {

  private static final int BOX_BYTES = 32;
  private static final int POINT_BYTES = 16;

  private ShapeRecord() {}

  /**
   * The geometry of a record's content; empty for a null shape.
   *
   * @throws IllegalArgumentException if it contradicts itself or isn't of a plane kind
   */
  static Geometry geometry(ByteBuffer in) {
    int type = in.getInt();
    if (type == 31) {
      throw new IllegalArgumentException("a shape in space (multipatch)");
    }
    return switch (type % 10) {
      case 0 -> MapShapes.FACTORY.createGeometryCollection();
      case 1 -> {
        check(in, POINT_BYTES);
        yield MapShapes.FACTORY.createPoint(point(in));
      }
      case 3 -> MapShapes.lines(parts(in));
      case 5 -> area(parts(in));
      case 8 -> {
        check(in, BOX_BYTES + 4);
        in.position(in.position() + BOX_BYTES);
        yield MapShapes.FACTORY.createMultiPointFromCoords(points(in, in.getInt()));
      }
      default -> throw new IllegalArgumentException("a shape of unknown type " + type);
    };
  }

  private static Geometry area(List<Coordinate[]> parts) {
    List<Coordinate[]> rings = new ArrayList<>();
    for (Coordinate[] part : parts) {
      LinearRing ring = MapShapes.ring(part);
      if (ring != null) {
        rings.add(ring.getCoordinates());
      }
    }
    return new RingNesting(rings).area();
  }

  private static List<Coordinate[]> parts(ByteBuffer in) {
    check(in, BOX_BYTES + 8);
    in.position(in.position() + BOX_BYTES);
    int count = in.getInt();
    int points = in.getInt();
    if (count < 0) {
      throw new IllegalArgumentException("a shape of " + count + " parts");
    }
    check(in, 4L * count);
    int[] starts = new int[count + 1];
    for (int i = 0; i < count; i++) {
      starts[i] = in.getInt();
    }
    starts[count] = points;
    for (int i = 0; i < count; i++) {
      if (starts[i] < 0 || starts[i] > starts[i + 1]) {
        throw new IllegalArgumentException("a shape whose parts contradict each other");
      }
    }
    Coordinate[] all = points(in, points);
    List<Coordinate[]> out = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      out.add(Arrays.copyOfRange(all, starts[i], starts[i + 1]));
    }
    return out;
  }

  private static Coordinate[] points(ByteBuffer in, int count) {
    if (count < 0) {
      throw new IllegalArgumentException("a shape of " + count + " points");
    }
    check(in, (long) POINT_BYTES * count);
    Coordinate[] out = new Coordinate[count];
    for (int i = 0; i < count; i++) {
      out[i] = point(in);
    }
    return out;
  }

  private static Coordinate point(ByteBuffer in) {
    double x = in.getDouble();
    double y = in.getDouble();
    if (!Double.isFinite(x) || !Double.isFinite(y)) {
      throw new IllegalArgumentException("a position without two numbers");
    }
    return new Coordinate(x, y);
  }

  private static void check(ByteBuffer in, long bytes) {
    if (in.remaining() < bytes) {
      throw new IllegalArgumentException("a shape that is cut short");
    }
  }
}
