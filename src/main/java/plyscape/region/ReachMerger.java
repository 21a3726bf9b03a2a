package plyscape.region;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import plyscape.planar.Chain;
import plyscape.planar.GridUnits;
import plyscape.planar.Linework;
import plyscape.planar.PlanarMap;
import plyscape.planar.PolygonAssembler;
import plyscape.planar.Sets;

/**
 * Gives what the smallest tool can't reach to a shallower neighbour. What a disk reaches of a
 * pocket is the pocket's opening by it; what is left over are the fillets of corners, which stay
 * (the simulation counts them), and necks, arms and whole pockets narrower than the tool, which go:
 * leftovers larger than the least area, and pockets that can't be entered at all. From the deepest
 * pocket up, so that what is given away is looked at again in the pocket above.
 */
final class ReachMerger {

  static final String WHY = "too narrow";

  /** Chords of the tool's circle in a quarter turn: off by 0.0012 of the radius at most. */
  private static final int QUADRANT_SEGMENTS = 16;

  /**
   * The opening is widened by this, grid units, so that the chords' error leaves no slivers along
   * every wall.
   */
  private static final double SLACK_UNITS = 10;

  /**
   * Pockets with more points than this are screened on a raster first: buffering them whole takes
   * seconds.
   */
  static final int SCREEN_POINTS = 6000;

  /**
   * Of such pockets those with more points than this on a square of the tool's radius are looked at
   * on a raster only.
   */
  private static final double CROWDED = 1.5;

  private static final GeometryFactory UNITS = new GeometryFactory();

  private final int screenPoints;
  private final double radiusUnits;
  private final double least;
  private final MapOrigin origin;

  /** Whether the last pocket was looked at on a raster only. */
  private boolean onRaster;

  private ReachMerger(double toolMm, double minimumAreaMm2, MapOrigin origin, int screenPoints) {
    this.screenPoints = screenPoints;
    radiusUnits = toolMm / 2 * GridUnits.PER_MM;
    least = minimumAreaMm2 * GridUnits.perMm2();
    this.origin = origin;
  }

  /**
   * The map with everything given away that a tool of this diameter can't reach.
   *
   * @param screenPoints pockets with more points than this are screened first, {@link
   *     #SCREEN_POINTS} but for tests
   */
  static RegionMap merge(
      RegionMap map, double toolMm, double minimumAreaMm2, MapOrigin origin, int screenPoints) {
    if (!(toolMm > 0)) {
      return map;
    }
    ReachMerger merger = new ReachMerger(toolMm, minimumAreaMm2, origin, screenPoints);
    RegionMap out = map;
    for (int ply = map.deepest(); ply >= 2; ply--) {
      if (occurs(out, ply)) {
        RegionMap cut = merger.atPly(out, ply);
        boolean coarse = merger.onRaster;
        if (cut != out) {
          out = merger.cleaned(cut);
        }
        if (coarse) {
          // With most of the walls gone the pocket is mostly plain enough now to be looked at
          // exactly.
          cut = merger.atPly(out, ply);
          out = cut == out ? out : merger.cleaned(cut);
        }
      }
    }
    return out;
  }

  /**
   * Crumbs that a cut leaves, such as the crossings of lanes that went, would burden every pocket
   * above.
   */
  private RegionMap cleaned(RegionMap cut) {
    return SmallRegionMerger.merge(
        TilingBuilder.simplified(cut, TilingBuilder.CLEANING_MM), least / GridUnits.perMm2());
  }

  private static boolean occurs(RegionMap map, int ply) {
    for (int r = 0; r < map.count(); r++) {
      if (map.ply(r) == ply) {
        return true;
      }
    }
    return false;
  }

  private RegionMap atPly(RegionMap map, int ply) {
    List<Polygon> parts =
        new PolygonAssembler(map.chains(), map.count(), 1, UNITS)
            .polygons(r -> map.ply(r) >= ply).stream().map(PolygonAssembler.Part::polygon).toList();
    int points = parts.stream().mapToInt(Polygon::getNumPoints).sum();
    List<Polygon> leftovers = large(leftovers(map, ply, parts, points));
    if (leftovers.isEmpty()) {
      return map;
    }
    Linework linework = new Linework(2);
    for (Chain chain : map.chains()) {
      linework.add(chain.x, chain.y, 0, chain.left() - chain.right(), chain.terrain);
    }
    for (int i = 0; i < leftovers.size(); i++) {
      linework.addUnits(leftovers.get(i), 1, i + 1);
    }
    return give(map, PlanarMap.of(linework), ply, leftovers);
  }

  private List<Polygon> leftovers(RegionMap map, int ply, List<Polygon> parts, int points) {
    onRaster = false;
    if (points < screenPoints) {
      return ofParts(parts);
    }
    double toolSquares =
        parts.stream().mapToDouble(Polygon::getArea).sum() / (radiusUnits * radiusUnits);
    onRaster = points > CROWDED * toolSquares;
    return onRaster
        ? ReachCells.of(map, ply, radiusUnits)
        : ofTiles(parts, ReachScreen.of(map, ply, radiusUnits, least));
  }

  /**
   * Parts are independent of each other; the order of the list is kept whatever the number of
   * threads.
   */
  private List<Polygon> ofParts(List<Polygon> parts) {
    return parts.parallelStream().map(this::leftovers).flatMap(g -> polygons(g).stream()).toList();
  }

  /**
   * The same, tile by tile where there may be any; what lies in several tiles is put together
   * again.
   */
  private List<Polygon> ofTiles(List<Polygon> parts, ReachScreen screen) {
    double reach = 3 * radiusUnits;
    List<List<Polygon>> found =
        IntStream.range(0, screen.tileColumns())
            .parallel()
            .mapToObj(c -> ofColumn(parts, screen, c, reach))
            .toList();
    List<Polygon> out = new ArrayList<>();
    List<Geometry> cutThrough = new ArrayList<>();
    for (int c = 0; c < found.size(); c++) {
      for (Polygon polygon : found.get(c)) {
        if (screen.crossesTiles(polygon.getEnvelopeInternal())) {
          cutThrough.add(polygon);
        } else {
          out.add(polygon);
        }
      }
    }
    if (!cutThrough.isEmpty()) {
      out.addAll(polygons(OverlayNGRobust.union(cutThrough)));
    }
    return out;
  }

  private List<Polygon> ofColumn(
      List<Polygon> parts, ReachScreen screen, int column, double reach) {
    List<Polygon> out = new ArrayList<>();
    List<Polygon> strip = null;
    for (int row = 0; row < screen.tileRows(); row++) {
      if (screen.suspect(column, row)) {
        if (strip == null) {
          strip = clipped(parts, screen.tiles(column, column, 0, screen.tileRows() - 1), reach);
        }
        Envelope tile = screen.tiles(column, column, row, row);
        Geometry frame = UNITS.toGeometry(tile);
        for (Polygon pocket : clipped(strip, tile, reach)) {
          Geometry rest = leftovers(pocket);
          if (!rest.isEmpty() && rest.getEnvelopeInternal().intersects(tile)) {
            out.addAll(polygons(OverlayNGRobust.overlay(rest, frame, OverlayNG.INTERSECTION)));
          }
        }
      }
    }
    return out;
  }

  /**
   * What of some polygons lies in a box with so much around it that what is cut off doesn't matter
   * within.
   */
  private static List<Polygon> clipped(List<Polygon> polygons, Envelope box, double reach) {
    Envelope wide = new Envelope(box);
    wide.expandBy(reach);
    Geometry frame = UNITS.toGeometry(wide);
    List<Polygon> out = new ArrayList<>();
    for (Polygon polygon : polygons) {
      if (wide.contains(polygon.getEnvelopeInternal())) {
        out.add(polygon);
      } else if (wide.intersects(polygon.getEnvelopeInternal())) {
        out.addAll(polygons(OverlayNGRobust.overlay(polygon, frame, OverlayNG.INTERSECTION)));
      }
    }
    return out;
  }

  /** What of a pocket the tool can't reach: fillets too. */
  private Geometry leftovers(Polygon pocket) {
    Geometry centres = buffer(pocket, -radiusUnits);
    return centres.isEmpty()
        ? pocket
        : OverlayNGRobust.overlay(
            pocket, buffer(centres, radiusUnits + SLACK_UNITS), OverlayNG.DIFFERENCE);
  }

  private List<Polygon> large(List<Polygon> polygons) {
    return polygons.stream().filter(p -> p.getArea() > least).toList();
  }

  private static List<Polygon> polygons(Geometry geometry) {
    List<Polygon> out = new ArrayList<>();
    for (int i = 0; i < geometry.getNumGeometries(); i++) {
      if (geometry.getGeometryN(i) instanceof Polygon polygon && !polygon.isEmpty()) {
        out.add(polygon);
      }
    }
    return out;
  }

  private static Geometry buffer(Geometry geometry, double distance) {
    return BufferOp.bufferOp(geometry, distance, new BufferParameters(QUADRANT_SEGMENTS));
  }

  private RegionMap give(RegionMap map, PlanarMap cut, int ply, List<Polygon> leftovers) {
    int faces = cut.faces();
    int[] plyOf = new int[faces];
    boolean[] moving = new boolean[faces];
    for (int f = 0; f < faces; f++) {
      plyOf[f] = map.ply(cut.winding(f, 0));
      int leftover = cut.winding(f, 1);
      moving[f] = leftover > 0 && leftover <= leftovers.size() && plyOf[f] >= ply;
    }
    int[] target = targets(cut, plyOf, moving, ply);
    long[] area2 = RegionMap.areas2(cut.chains(), faces);
    List<List<Piece>> pieces = new ArrayList<>(Collections.nCopies(faces, List.of()));
    boolean[] told = new boolean[map.count()];
    for (int f = 0; f < faces; f++) {
      int region = cut.winding(f, 0);
      List<Piece> own = new ArrayList<>();
      if (target[f] > 0) {
        Coordinate inside = leftovers.get(cut.winding(f, 1) - 1).getInteriorPoint().getCoordinate();
        Coordinate place = new Coordinate(inside.x / GridUnits.PER_MM, inside.y / GridUnits.PER_MM);
        Piece was = origin.at(place, area2[f]);
        own.add(new Piece(was.source(), was.ply(), area2[f], WHY));
        plyOf[f] = target[f];
      } else if (!told[region]) {
        told[region] = true;
        own.addAll(map.pieces(region));
      }
      pieces.set(f, own);
    }
    return RegionMap.of(cut.chains(), plyOf, pieces);
  }

  /**
   * For each moving face the ply of the shallower region with which its leftover shares the longest
   * line; 0 for none.
   */
  private static int[] targets(PlanarMap cut, int[] plyOf, boolean[] moving, int ply) {
    Sets groups = new Sets(plyOf.length);
    for (Chain chain : cut.chains()) {
      if (moving[chain.left()] && moving[chain.right()]) {
        groups.join(chain.left(), chain.right());
      }
    }
    double[][] shared = new double[plyOf.length][];
    for (Chain chain : cut.chains()) {
      share(shared, groups, moving, plyOf, ply, chain, chain.left(), chain.right());
      share(shared, groups, moving, plyOf, ply, chain, chain.right(), chain.left());
    }
    int[] out = new int[plyOf.length];
    for (int f = 0; f < plyOf.length; f++) {
      double[] lengths = moving[f] ? shared[groups.find(f)] : null;
      for (int p = 1; lengths != null && p < ply; p++) {
        if (lengths[p] > 0 && (out[f] == 0 || lengths[p] > lengths[out[f]])) {
          out[f] = p;
        }
      }
    }
    return out;
  }

  private static void share(
      double[][] shared,
      Sets groups,
      boolean[] moving,
      int[] plyOf,
      int ply,
      Chain chain,
      int inner,
      int outer) {
    if (moving[inner] && !moving[outer] && plyOf[outer] > 0 && plyOf[outer] < ply) {
      int group = groups.find(inner);
      if (shared[group] == null) {
        shared[group] = new double[ply];
      }
      shared[group][plyOf[outer]] += chain.length();
    }
  }
}
