package plyscape.standing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.densify.Densifier;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import plyscape.grid.Box;
import plyscape.planar.DiskOpening;
import plyscape.planar.GridUnits;
import plyscape.planar.Linework;
import plyscape.planar.PlanarMap;
import plyscape.planar.PolygonAssembler;
import plyscape.planar.PolygonAssembler.Ring;

/**
 * Wood opened by a disk: what it reaches is the wood that stays. Each opening costs two nodings of
 * the wood's outline, O(n log n) in its points.
 */
public final class WoodOpening {

  /** Parts farther than this from what stays don't touch it, mm: more than slack and rounding. */
  private static final double TOUCHING_MM = 0.03;

  private static final int WOOD = 0;
  private static final int STAYS = 1;
  private static final GeometryFactory MM = new GeometryFactory();

  private final double widthMm;
  private final PlanarMap faces;
  private final PolygonAssembler assembler;

  private WoodOpening(PlanarMap faces, double widthMm) {
    this.faces = faces;
    this.widthMm = widthMm;
    assembler = new PolygonAssembler(faces.chains(), faces.faces(), GridUnits.PER_MM, MM);
  }

  /**
   * Area that a disk can't come into, its corners too, mm2.
   *
   * @param area a pocket or wood, valid, mm
   * @param widthMm diameter of the disk
   */
  public static double goneMm2(Geometry area, double widthMm) {
    Linework lines = new Linework(1);
    lines.addMm(area, 0);
    PlanarMap map = PlanarMap.of(lines);
    PolygonAssembler assembler = new PolygonAssembler(map.chains(), map.faces(), 1, null);
    return of(assembler.rings(f -> map.winding(f, 0) > 0), widthMm).polygons(false).stream()
        .mapToDouble(Polygon::getArea)
        .sum();
  }

  /**
   * Opens wood.
   *
   * @param wood its outlines
   * @param widthMm diameter of the disk
   */
  static WoodOpening of(List<Ring> wood, double widthMm) {
    DiskOpening disk = new DiskOpening(widthMm / 2 * GridUnits.PER_MM);
    disk.add(wood);
    Linework both = new Linework(2);
    wood.forEach(ring -> both.add(ring.x(), ring.y(), WOOD, 1, false));
    disk.addTo(both, STAYS);
    return new WoodOpening(PlanarMap.of(both), widthMm);
  }

  /**
   * Outlines of the wood around a pocket.
   *
   * @param panel all wood, mm
   * @param pocket taken out of it, mm
   */
  static List<Ring> wood(Box panel, MultiPolygon pocket) {
    int x0 = GridUnits.of(panel.minX());
    int y0 = GridUnits.of(panel.minY());
    int x1 = GridUnits.of(panel.maxX());
    int y1 = GridUnits.of(panel.maxY());
    Linework lines = new Linework(1);
    lines.add(new int[] {x0, x1, x1, x0, x0}, new int[] {y0, y0, y1, y1, y0}, 0, 1, false);
    lines.addMm(pocket, 0, -1);
    PlanarMap map = PlanarMap.of(lines);
    return new PolygonAssembler(map.chains(), map.faces(), 1, null)
        .rings(f -> map.winding(f, 0) > 0);
  }

  /**
   * Fins and posts: connected parts of the wood that vanish, without the corners of what stays, mm.
   */
  List<Polygon> vanished() {
    List<Polygon> stays = polygons(true);
    IndexedFacetDistance distance =
        stays.isEmpty()
            ? null
            : new IndexedFacetDistance(MM.createMultiPolygon(stays.toArray(Polygon[]::new)));
    return polygons(false).stream()
        .filter(part -> distance == null || standsOut(part, distance))
        .toList();
  }

  private List<Polygon> polygons(boolean stays) {
    List<Polygon> out = new ArrayList<>();
    assembler
        .polygons(f -> faces.winding(f, WOOD) > 0 && faces.winding(f, STAYS) > 0 == stays)
        .forEach(part -> out.add(part.polygon()));
    return out;
  }

  /** Whether a part touches nothing that stays, or reaches farther from it than the disk. */
  private boolean standsOut(Polygon part, IndexedFacetDistance stays) {
    boolean touches =
        Arrays.stream(part.getExteriorRing().getCoordinates())
            .anyMatch(place -> stays.isWithinDistance(MM.createPoint(place), TOUCHING_MM));
    if (!touches) {
      return true;
    }
    Envelope box = part.getEnvelopeInternal();
    // Most are corners, which can't reach that far.
    return Math.hypot(box.getWidth(), box.getHeight()) > widthMm
        && Arrays.stream(Densifier.densify(part, Math.max(0.05, widthMm / 2)).getCoordinates())
            .anyMatch(place -> !stays.isWithinDistance(MM.createPoint(place), widthMm));
  }
}
