package plyscape.region;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.locationtech.jts.algorithm.locate.SimplePointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.Grid;
import plyscape.layup.FaceWindow;

/**
 * The faces of a sculpted panel: within each region a depth at every place, continuous and inside
 * its ply's window; at a region's border a wall. Made by {@link FaceMaker}. Immutable; the arrays
 * and geometries are shared, not changed.
 *
 * @param relief elevations in metres on the panel, rounded to steps of {@code stepM} over {@code
 *     baseM} so that a 16-bit picture holds them exactly
 * @param baseM least elevation of the relief
 * @param stepM 0 when all are alike
 * @param polygons every region, by ply, then in the order of the ply's polygons
 * @param faces one a polygon
 * @param cuspMm height of ridges that finishing may leave
 */
public record FaceField(
    Grid relief,
    double baseM,
    double stepM,
    List<Polygon> polygons,
    List<Face> faces,
    double cuspMm) {

  /** Regions whose shallowest places differ by less are roughed to one depth. */
  private static final double ROUGH_STEP_MM = 0.15;

  /** Checks that there is a face for every polygon. */
  public FaceField {
    if (polygons.size() != faces.size()) {
      throw new IllegalArgumentException(polygons.size() + " polygons, " + faces.size() + " faces");
    }
  }

  /** Depth to which a place in a region is cut, mm. */
  public double depthMm(int region, double x, double y) {
    Face face = faces.get(region);
    return face.flat() ? face.upperMm() : face.depthMm(relief.bilinear(x, y));
  }

  /** Depth of every cell of a frame, rows as the frame has them; NaN outside all regions. */
  public double[] depthsMm(CellFrame frame) {
    int[] region = RegionRaster.of(polygons, frame);
    double[] depths = new double[region.length];
    for (int row = 0; row < frame.rows(); row++) {
      for (int column = 0; column < frame.columns(); column++) {
        int i = row * frame.columns() + column;
        depths[i] =
            region[i] == RegionRaster.NONE
                ? Double.NaN
                : depthMm(region[i], frame.centreX(column), frame.centreY(row));
      }
    }
    return depths;
  }

  /**
   * Depth to which flat cutters go in each region before it is finished, mm: all the way for a flat
   * face, else its shallowest place or up to {@value #ROUGH_STEP_MM} mm above that, so that a ply's
   * regions need few levels.
   */
  public double[] roughMm() {
    double[] rough = new double[faces.size()];
    Map<Integer, List<Integer>> byPly = new TreeMap<>();
    for (int i = 0; i < rough.length; i++) {
      rough[i] = faces.get(i).upperMm();
      if (!faces.get(i).flat()) {
        byPly.computeIfAbsent(faces.get(i).plyNumber(), ply -> new ArrayList<>()).add(i);
      }
    }
    for (List<Integer> regions : byPly.values()) {
      regions.sort(Comparator.comparingDouble(i -> faces.get(i).upperMm()));
      double level = Double.NEGATIVE_INFINITY;
      for (int i : regions) {
        level = rough[i] > level + ROUGH_STEP_MM ? rough[i] : level;
        rough[i] = level;
      }
    }
    return rough;
  }

  /** Shallowest and deepest cut of any face of a ply, mm; null for a ply without faces. */
  public FaceWindow rangeMm(int plyNumber) {
    double upper = Double.POSITIVE_INFINITY;
    double lower = 0;
    for (Face face : faces) {
      if (face.plyNumber() == plyNumber) {
        upper = Math.min(upper, face.upperMm());
        lower = Math.max(lower, face.lowerMm());
      }
    }
    return upper <= lower ? new FaceWindow(upper, lower) : null;
  }

  /** Whether there is anything but flat faces. */
  public boolean sculpted() {
    return faces.stream().anyMatch(face -> !face.flat());
  }

  /**
   * The faces of a part on a panel of its own: each keeps the face of the region that it is a piece
   * of, so that faces go on across seams.
   *
   * @param part of the carved area, mm
   * @param own where that part lies on its own panel
   * @param tiling of that panel
   */
  public FaceField part(Box part, Box own, Tiling tiling) {
    double dx = own.minX() - part.minX();
    double dy = own.minY() - part.minY();
    CellFrame cells = relief.frame();
    CellFrame moved =
        new CellFrame(
            cells.minX() + dx,
            cells.minY() + dy,
            cells.cellX(),
            cells.cellY(),
            cells.columns(),
            cells.rows());
    List<Polygon> pieces = polygons(tiling);
    List<Face> taken = new ArrayList<>();
    for (Polygon piece : pieces) {
      Coordinate inside = piece.getInteriorPoint().getCoordinate();
      taken.add(faces.get(regionAt(new Coordinate(inside.x - dx, inside.y - dy))));
    }
    return new FaceField(
        new Grid(moved, relief.values()), baseM, stepM, pieces, List.copyOf(taken), cuspMm);
  }

  private int regionAt(Coordinate place) {
    int nearest = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < polygons.size(); i++) {
      if (!polygons.get(i).getEnvelopeInternal().covers(place)) {
        continue;
      }
      if (SimplePointInAreaLocator.locate(place, polygons.get(i)) != Location.EXTERIOR) {
        return i;
      }
      double distance = polygons.get(i).distance(polygons.get(i).getFactory().createPoint(place));
      if (distance < least) { // cutting along a seam moves lines by less than 0.001 mm
        least = distance;
        nearest = i;
      }
    }
    return nearest;
  }

  /** All polygons of a tiling, by ply, then in the ply's order. */
  static List<Polygon> polygons(Tiling tiling) {
    List<Polygon> out = new ArrayList<>();
    for (MultiPolygon shown : tiling.exposed().values()) {
      for (int i = 0; i < shown.getNumGeometries(); i++) {
        out.add((Polygon) shown.getGeometryN(i));
      }
    }
    return List.copyOf(out);
  }
}
