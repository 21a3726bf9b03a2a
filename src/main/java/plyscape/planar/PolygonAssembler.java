package plyscape.planar;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.IntPredicate;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * Polygons of unions of regions, made by walking the chains between "in" and "out": shells
 * counter-clockwise, holes clockwise, every ring simple. No geometry is computed, so what shared a
 * chain shares its vertices.
 */
public final class PolygonAssembler {

  private final List<Chain> chains;
  private final int regions;
  private final NodeTable nodes;
  private final double scale;
  private final GeometryFactory factory;

  /**
   * Prepares a map.
   *
   * @param chains with the regions, or faces, to their left and right
   * @param regions how many there are, the outside (0) included
   * @param unitsPerCoordinate 1000 for polygons in mm, 1 for polygons in grid units
   */
  public PolygonAssembler(
      List<Chain> chains, int regions, int unitsPerCoordinate, GeometryFactory factory) {
    this.chains = chains;
    this.regions = regions;
    this.scale = unitsPerCoordinate;
    this.factory = factory;
    nodes = new NodeTable(chains);
  }

  /** One polygon and the lowest number of the regions that it is made of. */
  public record Part(int region, Polygon polygon) {}

  /**
   * The connected parts of the union of the regions that are in, by the position of their
   * westernmost point.
   */
  public List<Part> polygons(IntPredicate in) {
    Sets parts = parts(in);
    TreeMap<Integer, List<Coordinate[]>> rings = new TreeMap<>();
    walkAll(
        in,
        (region, ring) ->
            rings.computeIfAbsent(parts.find(region), k -> new ArrayList<>()).add(scaled(ring)));
    List<Part> out = new ArrayList<>();
    rings.forEach((part, list) -> out.add(new Part(part, polygon(list))));
    out.sort(
        Comparator.comparingDouble((Part p) -> p.polygon().getCoordinates()[0].x)
            .thenComparingDouble(p -> p.polygon().getCoordinates()[0].y)
            .thenComparingInt(Part::region));
    return out;
  }

  /**
   * The outlines of the union of the regions that are in, grid units, what is in on their left:
   * each simple, its first point the westernmost and again the last.
   */
  public List<Ring> rings(IntPredicate in) {
    List<Ring> out = new ArrayList<>();
    walkAll(in, (region, ring) -> out.add(ring));
    return out;
  }

  /** The same by connected parts of the union, in the order of their lowest regions. */
  public List<RingPart> ringParts(IntPredicate in) {
    Sets parts = parts(in);
    TreeMap<Integer, List<Ring>> rings = new TreeMap<>();
    walkAll(
        in,
        (region, ring) ->
            rings.computeIfAbsent(parts.find(region), k -> new ArrayList<>()).add(ring));
    List<RingPart> out = new ArrayList<>();
    rings.forEach((part, list) -> out.add(new RingPart(part, list)));
    return out;
  }

  /** The name of each region's connected part, among those that are in. */
  public Sets parts(IntPredicate in) {
    Sets parts = new Sets(regions);
    for (Chain chain : chains) {
      if (in.test(chain.left) && in.test(chain.right)) {
        parts.join(chain.left, chain.right);
      }
    }
    return parts;
  }

  /** Outlines of one part and its name, as {@link #parts} has it. */
  public record RingPart(int name, List<Ring> rings) {}

  /** A closed line on the grid. */
  public record Ring(int[] x, int[] y) {

    /** Twice the area inside, negative for a hole. */
    public long area2() {
      long area2 = 0;
      for (int i = 0; i + 1 < x.length; i++) {
        area2 += GridUnits.cross(x[i], y[i], x[i + 1], y[i + 1]);
      }
      return area2;
    }

    /** Area inside over half the length, grid units: negative for a hole. */
    public double meanWidth() {
      double length = 0;
      for (int i = 0; i + 1 < x.length; i++) {
        length += Math.hypot(x[i + 1] - x[i], y[i + 1] - y[i]);
      }
      return area2() / length;
    }
  }

  private interface RingSink {
    void accept(int region, Ring ring);
  }

  private void walkAll(IntPredicate in, RingSink sink) {
    int halves = 2 * chains.size();
    boolean[] boundary = new boolean[halves];
    for (int c = 0; c < chains.size(); c++) {
      Chain chain = chains.get(c);
      boolean left = in.test(chain.left);
      boolean right = in.test(chain.right);
      boundary[2 * c] = left && !right;
      boundary[2 * c + 1] = right && !left;
    }
    boolean[] done = new boolean[halves];
    for (int h = 0; h < halves; h++) {
      if (boundary[h] && !done[h]) {
        Chain chain = chains.get(h >> 1);
        int region = (h & 1) == 0 ? chain.left : chain.right;
        walk(h, boundary, done, ring -> sink.accept(region, ring));
      }
    }
  }

  /** Walks one cycle and cuts it into simple rings at nodes that it passes more than once. */
  private void walk(int begin, boolean[] boundary, boolean[] done, Consumer<Ring> rings) {
    List<Integer> path = new ArrayList<>();
    java.util.Map<Integer, Integer> placeOfNode = new java.util.HashMap<>();
    int at = begin;
    do {
      done[at] = true;
      placeOfNode.put(nodes.start(at), path.size());
      path.add(at);
      int end = nodes.start(at ^ 1);
      Integer place = placeOfNode.get(end);
      if (place != null) {
        rings.accept(ring(path.subList(place, path.size())));
        for (int i = path.size() - 1; i >= place; i--) {
          placeOfNode.remove(nodes.start(path.remove(i)));
        }
      }
      int next = nodes.clockwise(at ^ 1);
      while (!boundary[next]) {
        next = nodes.clockwise(next);
      }
      at = next;
    } while (at != begin);
  }

  private Ring ring(List<Integer> halves) {
    int n = 1;
    for (int h : halves) {
      n += chains.get(h >> 1).last();
    }
    int[] x = new int[n];
    int[] y = new int[n];
    int used = 0;
    int lowest = 0;
    for (int h : halves) {
      Chain chain = chains.get(h >> 1);
      for (int i = 0; i < chain.last(); i++) {
        int from = (h & 1) == 0 ? i : chain.last() - i;
        x[used] = chain.x[from];
        y[used] = chain.y[from];
        if (x[used] < x[lowest] || x[used] == x[lowest] && y[used] < y[lowest]) {
          lowest = used;
        }
        used++;
      }
    }
    int[] ringX = new int[n];
    int[] ringY = new int[n];
    for (int i = 0; i < n; i++) {
      int from = (lowest + i) % (n - 1);
      ringX[i] = x[from];
      ringY[i] = y[from];
    }
    return new Ring(ringX, ringY);
  }

  private Coordinate[] scaled(Ring ring) {
    Coordinate[] out = new Coordinate[ring.x().length];
    for (int i = 0; i < out.length; i++) {
      out[i] = new Coordinate(ring.x()[i] / scale, ring.y()[i] / scale);
    }
    return out;
  }

  private Polygon polygon(List<Coordinate[]> rings) {
    LinearRing shell = null;
    List<LinearRing> holes = new ArrayList<>();
    rings.sort(
        Comparator.comparingDouble((Coordinate[] r) -> r[0].x)
            .thenComparingDouble(r -> r[0].y)
            .thenComparingDouble(r -> r[1].x)
            .thenComparingDouble(r -> r[1].y));
    for (Coordinate[] ring : rings) {
      if (org.locationtech.jts.algorithm.Area.ofRingSigned(ring) < 0) {
        if (shell != null) {
          throw new IllegalStateException(
              "a region has two outer rings, at " + ring[0] + " and " + shell.getCoordinate());
        }
        shell = factory.createLinearRing(ring);
      } else {
        holes.add(factory.createLinearRing(ring));
      }
    }
    if (shell == null) {
      throw new IllegalStateException("a region has no outer ring, at " + rings.get(0)[0]);
    }
    return factory.createPolygon(shell, holes.toArray(new LinearRing[0]));
  }
}
