package plyscape.standing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import plyscape.grid.Box;
import plyscape.planar.PolygonAssembler.Ring;

/**
 * Finds weak fins and posts. Each level is opened by a disk of the least width, and by one for each
 * height that its faces can have over deeper ones, as wide as that height needs by the rule. A part
 * belongs to the level of the ply on its middle.
 */
public final class StandingCheck {

  /** The inscribed circle is found to this, mm. */
  private static final double CIRCLE_MM = 0.005;

  private final Box panel;
  private final SortedMap<Integer, MultiPolygon> exposed;
  private final SortedMap<Integer, MultiPolygon> pockets;
  private final SortedMap<Integer, Terrace> terraces = new TreeMap<>();
  private final SortedMap<Integer, IndexedFacetDistance> edges = new TreeMap<>();
  private final StandingRule rule;

  /**
   * Prepares a check.
   *
   * @param panel all wood, the border that is never cut included, mm
   * @param exposed ply number to where it shows, mm
   * @param pockets ply number to where it or a deeper one shows, mm
   * @param terraces one a ply that shows
   */
  public StandingCheck(
      Box panel,
      SortedMap<Integer, MultiPolygon> exposed,
      SortedMap<Integer, MultiPolygon> pockets,
      List<Terrace> terraces,
      StandingRule rule) {
    this.panel = panel;
    this.exposed = exposed;
    this.pockets = pockets;
    this.rule = rule;
    terraces.forEach(terrace -> this.terraces.put(terrace.ply(), terrace));
    exposed.forEach((ply, area) -> edges.put(ply, new IndexedFacetDistance(area)));
  }

  /** All weak parts, the slenderest first; of equals the one farther west, then south. */
  public List<WeakPart> weak() {
    List<Integer> levels = List.copyOf(exposed.keySet());
    List<WeakPart> out =
        new ArrayList<>(
            IntStream.range(0, Math.max(0, levels.size() - 1))
                .parallel()
                .mapToObj(i -> weak(levels.get(i)))
                .flatMap(List::stream)
                .toList());
    out.sort(
        Comparator.comparingDouble((WeakPart part) -> -part.slenderness())
            .thenComparingDouble(part -> part.at().x)
            .thenComparingDouble(part -> part.at().y));
    return List.copyOf(out);
  }

  /** The weak parts with a ply on top. */
  public List<WeakPart> weak(int ply) {
    MultiPolygon pocket = pockets.tailMap(ply + 1).values().stream().findFirst().orElse(null);
    if (pocket == null || pocket.isEmpty() || !exposed.containsKey(ply)) {
      return List.of();
    }
    IndexedPointInAreaLocator own = new IndexedPointInAreaLocator(exposed.get(ply));
    PreparedGeometry shown = PreparedGeometryFactory.prepare(exposed.get(ply));
    List<WeakPart> found = new ArrayList<>();
    List<Ring> wood = WoodOpening.wood(panel, pocket);
    for (double widthMm : widthsMm(ply)) {
      for (Polygon area : WoodOpening.of(wood, widthMm).vanished()) {
        if (!shown.intersects(area)) {
          continue; // of another ply; the circle in a long border takes longer than all the rest
        }
        WeakPart part = part(ply, area, widthMm);
        if (own.locate(part.at()) != Location.EXTERIOR && isWeak(part)) {
          add(found, part);
        }
      }
    }
    return found;
  }

  /** Disks by which a level is opened, narrowest first. */
  private List<Double> widthsMm(int ply) {
    double face = terraces.get(ply).faceMm();
    List<Double> widths = new ArrayList<>();
    if (rule.leastWidthMm() > 0) {
      widths.add(rule.leastWidthMm());
    }
    terraces.tailMap(ply + 1).values().stream()
        .map(deeper -> (deeper.faceMm() - face) / rule.slenderness())
        .filter(width -> width > rule.leastWidthMm())
        .forEach(widths::add);
    return widths;
  }

  private WeakPart part(int ply, Polygon area, double withinMm) {
    MaximumInscribedCircle circle = new MaximumInscribedCircle(area, CIRCLE_MM);
    Coordinate at = circle.getCenter().getCoordinate();
    double width = 2 * circle.getRadiusLine().getLength();
    double deepest = terraces.get(ply).faceMm();
    for (Terrace deeper : terraces.tailMap(ply + 1).values()) {
      IndexedFacetDistance edge = edges.get(deeper.ply());
      if (edge != null && edge.isWithinDistance(area, withinMm)) {
        deepest = Math.max(deepest, deeper.faceMm());
      }
    }
    return new WeakPart(ply, area, at, width, deepest - terraces.get(ply).faceMm());
  }

  private boolean isWeak(WeakPart part) {
    boolean along = GrainRun.along(part.area(), terraces.get(part.ply()).grainDegrees());
    // Disks of exactly the least width just fit into wood of it: a rounding doesn't count.
    return part.heightMm() > 0
        && part.widthMm() < rule.neededMm(part.heightMm(), along) - CIRCLE_MM;
  }

  /** A wider opening finds the same part in whole: it counts once, by its narrowest find. */
  private static void add(List<WeakPart> found, WeakPart part) {
    double width = part.widthMm();
    double height = part.heightMm();
    for (WeakPart earlier : List.copyOf(found)) {
      if (earlier.area().intersects(part.area())) {
        width = Math.min(width, earlier.widthMm());
        height = Math.max(height, earlier.heightMm());
        found.remove(earlier);
      }
    }
    found.add(new WeakPart(part.ply(), part.area(), part.at(), width, height));
  }
}
