package plyscape.region;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import plyscape.grid.CellOutlines;
import plyscape.grid.DistanceTransform;
import plyscape.planar.OutlineLayer;
import plyscape.planar.OutlineSimplifier;

/**
 * What a round tool can't reach of a pocket with very many walls, on a raster of a tenth of its
 * radius: such as a raster of noise, where exact openings take half a minute. Where something ends
 * against reached ground the cut may be off by three cells; along walls it follows these exactly,
 * as the patches found here reach beyond them and only what lies in the pocket is given away.
 * Narrow places that a tool would pass with less than a cell to spare count as too narrow.
 */
final class ReachCells {

  private static final double CELLS_PER_RADIUS = 10;

  private static final double MOST_CELLS = 4e6;

  /** A tool position is this many cells clear of the nearest wall cell's centre. */
  private static final double CLEAR = 0.5;

  /** What is this many cells beyond the tool's reach isn't just the raster's error along a wall. */
  private static final double SURE = 2;

  /** Patches go on to where the tool surely reaches, and this many cells into the walls. */
  private static final double SPREAD = 2.5;

  /** Outlines of patches are straightened by this many cells: less than they reach into walls. */
  private static final double STRAIGHT = 1.2;

  private static final GeometryFactory UNITS = new GeometryFactory();

  private ReachCells() {}

  /**
   * Patches, apart from each other, that cover the unreachable parts; they stick out of the pocket.
   * Grid units.
   */
  static List<Polygon> of(RegionMap map, int ply, double radiusUnits) {
    WallRaster raster =
        new WallRaster(WallRaster.walls(map, ply), radiusUnits / CELLS_PER_RADIUS, MOST_CELLS);
    int columns = raster.columns;
    int rows = raster.rows;
    double radius = radiusUnits / raster.cell;
    boolean[] blocked = raster.blocked();
    int[] clear = DistanceTransform.of(blocked, columns, rows).squared();
    boolean[] position = new boolean[blocked.length];
    for (int i = 0; i < position.length; i++) {
      position[i] = !blocked[i] && clear[i] >= (radius + CLEAR) * (radius + CLEAR);
    }
    int[] away = DistanceTransform.of(position, columns, rows).squared();
    boolean[] sure = new boolean[blocked.length];
    for (int i = 0; i < sure.length; i++) {
      sure[i] = raster.inside[i] && away[i] > (radius + SURE) * (radius + SURE);
    }
    int[] near = DistanceTransform.of(sure, columns, rows).squared();
    boolean[] patch = new boolean[blocked.length];
    for (int i = 0; i < patch.length; i++) {
      boolean reached = !blocked[i] && away[i] <= (radius + CLEAR) * (radius + CLEAR);
      patch[i] = sure[i] || !reached && near[i] <= SPREAD * SPREAD;
    }
    return straightened(CellOutlines.of(patch, columns, rows), raster);
  }

  /**
   * Steps would cut every wall that they follow to crumbs, and leave a saw's teeth across necks.
   */
  private static List<Polygon> straightened(List<CellOutlines.Patch> patches, WallRaster raster) {
    OutlineLayer steps = new OutlineLayer();
    for (CellOutlines.Patch patch : patches) {
      add(patch.shell(), raster, steps);
      patch.holes().forEach(hole -> add(hole, raster, steps));
    }
    Iterator<OutlineLayer.Outline> less =
        OutlineSimplifier.layer(steps, STRAIGHT * raster.cell, false).outlines().iterator();
    List<Polygon> out = new ArrayList<>();
    for (CellOutlines.Patch patch : patches) {
      LinearRing shell = ring(less.next());
      List<LinearRing> holes = new ArrayList<>();
      for (int i = 0; i < patch.holes().size(); i++) {
        holes.add(ring(less.next()));
      }
      out.add(UNITS.createPolygon(shell, holes.toArray(new LinearRing[0])));
    }
    return out;
  }

  private static void add(int[] xy, WallRaster raster, OutlineLayer layer) {
    int n = xy.length / 2;
    int[] x = new int[n + 1];
    int[] y = new int[n + 1];
    for (int i = 0; i <= n; i++) {
      x[i] = (int) Math.rint(raster.x(xy[2 * (i % n)]));
      y[i] = (int) Math.rint(raster.y(xy[2 * (i % n) + 1]));
    }
    layer.add(x, y, n + 1, false);
  }

  private static LinearRing ring(OutlineLayer.Outline outline) {
    Coordinate[] out = new Coordinate[outline.x().length];
    for (int i = 0; i < out.length; i++) {
      out[i] = new Coordinate(outline.x()[i], outline.y()[i]);
    }
    return UNITS.createLinearRing(out);
  }
}
