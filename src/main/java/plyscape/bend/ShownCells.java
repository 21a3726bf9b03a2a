package plyscape.bend;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.layup.PanelPoint;
import plyscape.layup.Spot;
import plyscape.region.FaceField;
import plyscape.region.RegionRaster;

/**
 * The places at which a plan is judged: centres of square cells over the carved area, each with the
 * ply that shows, the depth it is cut to in the flat plan and whether sanding reaches it. A ply
 * that shows on no cell's centre is judged at a point inside its largest part. Immutable.
 */
public final class ShownCells {

  /** Cells on the longer side, at most: beyond, places near each other tell the same. */
  private static final int MOST = 400;

  private static final double CELL_MM = 1;

  private final List<Spot> spots = new ArrayList<>();

  /**
   * Lays cells over regions.
   *
   * @param exposed ply number to where it shows
   * @param pockets ply number to the pocket at that ply
   * @param faces depths where they follow the terrain, or null
   * @param blockMm width of the sanding block
   */
  public ShownCells(
      Box carved,
      SortedMap<Integer, MultiPolygon> exposed,
      SortedMap<Integer, MultiPolygon> pockets,
      FaceField faces,
      double blockMm) {
    double cell = apartMm(carved);
    int columns = (int) Math.ceil(carved.width() / cell);
    int rows = (int) Math.ceil(carved.height() / cell);
    CellFrame frame =
        new CellFrame(
            carved.minX() - cell, carved.minY() - cell, cell, cell, columns + 2, rows + 2);
    SandedCells sanded = new SandedCells(frame, pockets, blockMm);
    double[] cut = faces == null ? null : faces.depthsMm(frame);
    exposed.forEach((ply, shape) -> add(ply, shape, frame, sanded, cut));
  }

  /** How far places lie apart over a carved area, mm. */
  public static double apartMm(Box carved) {
    return Math.max(CELL_MM, Math.max(carved.width(), carved.height()) / MOST);
  }

  private void add(int ply, MultiPolygon shape, CellFrame frame, SandedCells sanded, double[] cut) {
    boolean[] inside = RegionRaster.inside(shape, frame);
    int before = spots.size();
    for (int i = 0; i < inside.length; i++) {
      if (inside[i]) {
        PanelPoint at =
            new PanelPoint(frame.centreX(i % frame.columns()), frame.centreY(i / frame.columns()));
        spots.add(new Spot(ply, at, cut == null ? Double.NaN : cut[i], sanded.reaches(ply, i)));
      }
    }
    if (spots.size() == before && !shape.isEmpty()) {
      Polygon largest = (Polygon) shape.getGeometryN(0);
      for (int k = 1; k < shape.getNumGeometries(); k++) {
        Polygon other = (Polygon) shape.getGeometryN(k);
        largest = other.getArea() > largest.getArea() ? other : largest;
      }
      Point inner = largest.getInteriorPoint();
      spots.add(new Spot(ply, new PanelPoint(inner.getX(), inner.getY()), Double.NaN, false));
    }
  }

  /** All of them, ply by ply. */
  public List<Spot> spots() {
    return List.copyOf(spots);
  }
}
