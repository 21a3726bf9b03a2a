package plyscape.standing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import plyscape.grid.Box;

/**
 * Closed forms: the shapes' own widths. What vanishes is also held against buffers of the geometry
 * library, another way to an opening, on made ground in {@link WoodOpeningTest}.
 */
class StandingCheckTest {

  private static final GeometryFactory MM = new GeometryFactory();
  private static final Box PANEL = new Box(0, 0, 60, 60);
  private static final StandingRule RULE = new StandingRule(0.8, 2.5);

  private static Geometry box(double x0, double y0, double x1, double y1) {
    return MM.toGeometry(new org.locationtech.jts.geom.Envelope(x0, x1, y0, y1));
  }

  private static MultiPolygon multi(Geometry area) {
    Polygon[] parts = new Polygon[area.getNumGeometries()];
    for (int i = 0; i < parts.length; i++) {
      parts[i] = (Polygon) area.getGeometryN(i);
    }
    return MM.createMultiPolygon(parts);
  }

  /** Weak parts where ply 1 is left and a pocket down to another ply's face is cut. */
  private static List<WeakPart> weak(Geometry pocket, double faceMm, double grain) {
    Geometry all = box(0, 0, 60, 60);
    SortedMap<Integer, MultiPolygon> exposed = new TreeMap<>();
    exposed.put(1, multi(all.difference(pocket)));
    exposed.put(4, multi(pocket));
    SortedMap<Integer, MultiPolygon> pockets = new TreeMap<>();
    pockets.put(1, multi(all));
    for (int ply = 2; ply <= 4; ply++) {
      pockets.put(ply, multi(pocket));
    }
    List<Terrace> terraces = List.of(new Terrace(1, 0, grain), new Terrace(4, faceMm, 0));
    return new StandingCheck(PANEL, exposed, pockets, terraces, RULE).weak();
  }

  private static List<WeakPart> weak(Geometry pocket, double faceMm) {
    return weak(pocket, faceMm, Double.NaN);
  }

  @Test
  void strip_narrowerThanLeastWidth_isWeakWithItsWidthAndHeight() {
    Geometry pocket = box(10, 10, 29.7, 40).union(box(30.3, 10, 50, 40));
    List<WeakPart> parts = weak(pocket, 1.5);
    assertEquals(1, parts.size());
    WeakPart fin = parts.get(0);
    assertEquals(1, fin.ply());
    assertEquals(0.6, fin.widthMm(), 0.01);
    assertEquals(1.5, fin.heightMm(), 1e-9);
    assertEquals(30, fin.at().x, 0.01);
    // Its ends grow out of the wood around, where the opening rounds off fillets.
    assertEquals(0.6 * 30, fin.area().getArea(), 0.6);
  }

  @Test
  void strip_asWideAsAsked_stands() {
    assertEquals(List.of(), weak(box(10, 10, 29.6, 40).union(box(30.4, 10, 50, 40)), 1.9));
  }

  @Test
  void strip_wideButTall_isWeakByItsSlenderness() {
    Geometry pocket = box(10, 10, 29.5, 40).union(box(30.5, 10, 50, 40));
    assertEquals(List.of(), weak(pocket, 2.4));
    assertEquals(2.6, weak(pocket, 2.6).get(0).slenderness(), 0.03);
  }

  @Test
  void strip_alongTheGrain_mayBeHalfSlenderer() {
    Geometry pocket = box(10, 10, 29.5, 40).union(box(30.5, 10, 50, 40));
    assertEquals(List.of(), weak(pocket, 3.6, 90));
    assertEquals(1, weak(pocket, 3.9, 90).size());
    assertEquals(1, weak(pocket, 2.6, 0).size());
  }

  @Test
  void annulus_isWeakAllRound() {
    Geometry ring =
        MM.createPoint(new Coordinate(30, 30))
            .buffer(10.35, 64)
            .difference(MM.createPoint(new Coordinate(30, 30)).buffer(9.65, 64));
    List<WeakPart> parts = weak(box(10, 10, 50, 50).difference(ring), 1.5);
    assertEquals(1, parts.size());
    assertEquals(0.7, parts.get(0).widthMm(), 0.02);
    assertEquals(Math.PI * 2 * 10 * 0.7, parts.get(0).area().getArea(), 0.2);
  }

  @Test
  void loneSquare_isAPostByItsSide() {
    Geometry pocket = box(10, 10, 50, 50);
    assertEquals(0.7, weak(pocket.difference(box(30, 30, 30.7, 30.7)), 1).get(0).widthMm(), 0.011);
    assertEquals(1, weak(pocket.difference(box(30, 30, 31, 31)), 2.6).size());
    assertEquals(List.of(), weak(pocket.difference(box(30, 30, 31, 31)), 2.4));
  }

  @Test
  void pocketsThatNearlyTouch_leaveAFinOnlyWhereTheyRunBesideEachOther() {
    Geometry left = MM.createPoint(new Coordinate(20, 30)).buffer(9.9, 64);
    Geometry right = MM.createPoint(new Coordinate(40, 30)).buffer(9.9, 64);
    List<WeakPart> parts = weak(left.union(right), 1);
    // Two circles of radius 9.9, 0.2 apart: 0.8 apart at 9.9 (1 - cos a) = 0.3, 2.4 mm to either
    // side.
    assertEquals(1, parts.size());
    assertEquals(4.85, parts.get(0).area().getEnvelopeInternal().getHeight(), 0.5);
    assertEquals(30, parts.get(0).at().x, 0.01);
    Geometry corner = box(10, 10, 30, 30).union(box(30.3, 30.3, 50, 50));
    assertEquals(List.of(), weak(corner, 1), "corner to corner is a neck, not a fin");
  }

  @Test
  void comb_everyToothIsAPart() {
    Geometry pocket = box(10, 10, 50, 30);
    for (int tooth = 0; tooth < 5; tooth++) {
      double x = 15 + 6 * tooth;
      pocket = pocket.difference(box(x, 15, x + 0.5, 30));
    }
    List<WeakPart> parts = weak(pocket, 1);
    assertEquals(5, parts.size());
    for (WeakPart part : parts) {
      assertEquals(0.5 * 15, part.area().getArea(), 0.3);
    }
  }

  @Test
  void cornersOfWideWood_areNoFins() {
    Geometry triangle =
        MM.createPolygon(
            new Coordinate[] {
              new Coordinate(20, 20),
              new Coordinate(40, 20),
              new Coordinate(30, 35),
              new Coordinate(20, 20)
            });
    assertEquals(List.of(), weak(box(10, 10, 50, 50).difference(triangle), 1));
  }

  @Test
  void turnedPart_isTheSamePart() {
    Geometry pocket = box(10, 10, 29.7, 40).union(box(30.3, 10, 50, 40));
    WeakPart plain = weak(pocket, 1.5).get(0);
    Geometry turned =
        AffineTransformation.rotationInstance(Math.toRadians(17), 30, 25).transform(pocket);
    WeakPart other = weak(turned, 1.5).get(0);
    assertEquals(plain.widthMm(), other.widthMm(), 0.01);
    assertEquals(plain.area().getArea(), other.area().getArea(), 0.1);
  }

  @Test
  void coreAndFlank_countOnceForTheCore() {
    // A ridge 0.4 wide of ply 1 on a base 5 wide of ply 2, beside it ply 4.
    Geometry all = box(0, 0, 60, 60);
    Geometry deep = box(5, 10, 27.5, 50).union(box(32.5, 10, 55, 50));
    Geometry base = box(27.5, 10, 32.5, 50).difference(box(29.8, 10, 30.2, 50));
    SortedMap<Integer, MultiPolygon> exposed = new TreeMap<>();
    exposed.put(1, multi(all.difference(deep).difference(base)));
    exposed.put(2, multi(base));
    exposed.put(4, multi(deep));
    SortedMap<Integer, MultiPolygon> pockets = new TreeMap<>();
    pockets.put(1, multi(all));
    pockets.put(2, multi(deep.union(base)));
    pockets.put(3, multi(deep));
    pockets.put(4, multi(deep));
    List<Terrace> terraces =
        List.of(new Terrace(1, 0, 0), new Terrace(2, 1.4, 0), new Terrace(4, 3.2, 0));
    List<WeakPart> parts = new StandingCheck(PANEL, exposed, pockets, terraces, RULE).weak();
    assertEquals(1, parts.size());
    assertEquals(1.4, parts.get(0).heightMm(), 1e-9);
    assertTrue(parts.get(0).widthMm() < 0.41);
  }
}
