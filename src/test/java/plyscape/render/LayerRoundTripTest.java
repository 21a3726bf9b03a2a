package plyscape.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.SortedMap;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import plyscape.grid.Box;
import plyscape.plan.Landscape;
import plyscape.region.Tiling;
import plyscape.render.layer.LayerFile;
import plyscape.render.layer.SvgLayerReader;
import plyscape.render.layer.SvgLayers;

/**
 * Seeded random tilings of octagons over one another, written as SVG and read back: nothing gets
 * lost or moves.
 */
class LayerRoundTripTest {

  private static final Box CARVED = new Box(5, 5, 95, 75);

  @Test
  void randomTilings_comeBackAsTheyWere() {
    for (long seed = 0; seed < 60; seed++) {
      Landscape plan = plan(seed);
      double sum = 0;
      for (LayerFile file : SvgLayers.write(plan)) {
        SvgLayerReader.Layer layer = SvgLayerReader.read(file.name(), file.text());
        MultiPolygon exposed = plan.tiling().exposed().get(layer.plyNumber());
        MultiPolygon pocket = plan.tiling().pockets().get(layer.plyNumber());
        // The tiling lies on the grid of 0.001 mm, so writing with three places loses nothing.
        assertEquals(places(exposed), places(layer.exposed()), "seed " + seed + " " + file.name());
        assertEquals(
            exposed.getArea(),
            evenOddArea(layer.exposed()),
            1e-7,
            "seed " + seed + " " + file.name());
        assertEquals(
            pocket.getArea(),
            evenOddArea(layer.pocket()),
            1e-7,
            "seed " + seed + " " + file.name());
        assertEquals(
            exposed.getNumPoints(), points(layer.exposed()), "seed " + seed + " " + file.name());
        sum += evenOddArea(layer.exposed());
      }
      assertEquals(CARVED.area(), sum, CARVED.area() * 1e-6, "seed " + seed);
    }
  }

  private static Set<Coordinate> places(MultiPolygon shape) {
    return new HashSet<>(List.of(shape.getCoordinates()));
  }

  /** To the last bit. */
  private static Set<Coordinate> places(List<double[]> rings) {
    Set<Coordinate> places = new HashSet<>();
    for (double[] ring : rings) {
      for (int i = 0; i < ring.length; i += 2) {
        places.add(new Coordinate(ring[i], ring[i + 1]));
      }
    }
    return places;
  }

  /**
   * The raster that all pictures are made of, against the polygons' own answer at random places.
   */
  @Test
  void raster_agreesWithPointInPolygon() {
    GeometryFactory factory = new GeometryFactory();
    for (long seed = 0; seed < 5; seed++) {
      Tiling tiling = plan(seed).tiling();
      PlyRaster raster = PlyRaster.of(tiling, 100, 80, 0.25);
      Random random = new Random(seed);
      for (int k = 0; k < 120; k++) {
        int column = random.nextInt(raster.columns());
        int row = random.nextInt(raster.rows());
        Geometry middle =
            factory.createPoint(new Coordinate((column + 0.5) * 0.25, 80 - (row + 0.5) * 0.25));
        int ply = raster.plies()[row * raster.columns() + column];
        for (int p : tiling.exposed().keySet()) {
          double distance = tiling.exposed().get(p).getBoundary().distance(middle);
          assertTrue(
              distance < 1e-9 || (p == ply) == tiling.exposed().get(p).contains(middle),
              "seed " + seed + " at " + middle);
        }
      }
    }
  }

  private static Landscape plan(long seed) {
    Random random = new Random(seed);
    List<Integer> plies = new ArrayList<>(List.of(1));
    List<Geometry> areas = new ArrayList<>(List.of(HandPlan.polygon(0, 0, 100, 0, 100, 80, 0, 80)));
    for (int i = 0; i < 14; i++) {
      plies.add(1 + random.nextInt(4));
      areas.add(octagon(random));
    }
    SortedMap<Integer, MultiPolygon> exposed = HandPlan.paint(CARVED, plies, areas);
    Landscape hand = HandPlan.landscape();
    return new Landscape(
        hand.job(),
        hand.depths(),
        hand.maps(),
        HandPlan.tiling(CARVED, exposed, List.of()),
        hand.faces(),
        hand.shape(),
        hand.standing(),
        hand.warnings());
  }

  /**
   * Sides along the axes and the diagonals, corners at multiples of 0.002 mm: then all crossings
   * lie on the grid of 0.001 mm.
   */
  private static Geometry octagon(Random random) {
    double x = random.nextInt(45_000) * 0.002;
    double y = random.nextInt(35_000) * 0.002;
    double w = (2_000 + random.nextInt(20_000)) * 0.002;
    double h = (2_000 + random.nextInt(20_000)) * 0.002;
    double c = random.nextInt(950) * 0.002;
    return HandPlan.polygon(
        x + c, y, x + w - c, y, x + w, y + c, x + w, y + h - c, x + w - c, y + h, x + c, y + h, x,
        y + h - c, x, y + c);
  }

  /**
   * Rings of a valid area don't cross, so a ring counts for or against by how many others it lies
   * in.
   */
  private static double evenOddArea(List<double[]> rings) {
    double sum = 0;
    for (double[] ring : rings) {
      int depth = 0;
      for (double[] other : rings) {
        depth +=
            other != ring && inside(other, (ring[0] + ring[2]) / 2, (ring[1] + ring[3]) / 2)
                ? 1
                : 0;
      }
      sum += (depth % 2 == 0 ? 1 : -1) * Math.abs(shoelace(ring));
    }
    return sum;
  }

  private static boolean inside(double[] ring, double x, double y) {
    boolean in = false;
    for (int i = 0; i < ring.length; i += 2) {
      int j = (i + 2) % ring.length;
      if (ring[i + 1] > y != ring[j + 1] > y
          && x < ring[i] + (y - ring[i + 1]) / (ring[j + 1] - ring[i + 1]) * (ring[j] - ring[i])) {
        in = !in;
      }
    }
    return in;
  }

  private static int points(List<double[]> rings) {
    return rings.stream().mapToInt(ring -> ring.length / 2 + 1).sum();
  }

  private static double shoelace(double[] ring) {
    double twice = 0;
    for (int i = 0; i < ring.length; i += 2) {
      int j = (i + 2) % ring.length;
      twice += ring[i] * ring[j + 1] - ring[j] * ring[i + 1];
    }
    return twice / 2;
  }
}
