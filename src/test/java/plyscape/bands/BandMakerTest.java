package plyscape.bands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.Grid;
import plyscape.grid.GroundFrame;
import plyscape.job.GroundCover;
import plyscape.job.TerrainOptions;
import plyscape.job.TerrainSpec;
import plyscape.layup.Boundary;
import plyscape.layup.Depths;
import plyscape.layup.Ply;
import plyscape.layup.PlyDepth;
import plyscape.terrain.RasterSource;
import plyscape.terrain.Terrain;
import plyscape.terrain.VoidCells;

/** The band methods against closed forms, published examples and exhaustive search. */
class BandMakerTest {

  /**
   * Section 4 of src/contract.md, worked by hand: mids 0.45, 1.39, 2.33 on 100..400 m; halfway
   * depths 0.92 and 1.86.
   */
  @Test
  void scale_breaksAtTheHalfwayDepths() {
    List<Double> breaks = ScaleBreaks.breaks(100, 400, new double[] {0.45, 1.39, 2.33});
    assertEquals(400 - 0.47 / 1.88 * 300, breaks.get(0), 1e-9);
    assertEquals(400 - 1.41 / 1.88 * 300, breaks.get(1), 1e-9);
  }

  /**
   * The rule as it is worded, at random elevations: the ply with the nearest mid depth wins, a tie
   * goes up.
   */
  @Test
  void scale_isTheNearestMidDepth() {
    for (int seed = 0; seed < 200; seed++) {
      Random random = new Random(seed);
      double[] mids = new double[2 + random.nextInt(7)];
      double depth = 0;
      for (int i = 0; i < mids.length; i++) {
        depth += 0.2 + random.nextDouble();
        mids[i] = depth;
      }
      double zmin = random.nextDouble() * 1000;
      double zmax = zmin + 1 + random.nextDouble() * 1000;
      Bands bands = new Bands(numbers(mids.length), ScaleBreaks.breaks(zmin, zmax, mids));
      for (int k = 0; k < 50; k++) {
        double z = zmin + random.nextDouble() * (zmax - zmin);
        double at = mids[0] + (zmax - z) / (zmax - zmin) * (mids[mids.length - 1] - mids[0]);
        int best = 0;
        for (int i = 1; i < mids.length; i++) {
          best = Math.abs(mids[i] - at) < Math.abs(mids[best] - at) ? i : best;
        }
        assertEquals(best + 1, bands.plyAt(z), "seed " + seed + ", z " + z);
      }
    }
  }

  @Test
  void equalInterval_partsTheRelief() {
    assertEquals(List.of(300.0, 200.0), IntervalBreaks.breaks(100, 400, 3));
  }

  @Test
  void equalArea_givesEachPlyAsManyCells() {
    double[] rising = new double[900];
    for (int i = 0; i < rising.length; i++) {
      rising[i] = i * i;
    }
    Bands bands = new Bands(numbers(3), QuantileBreaks.breaks(rising, 3));
    assertEquals(List.of(300L, 300L, 300L), counts(bands, rising));
  }

  @Test
  void equalArea_keepsRunsOfOneValueWhole() {
    // Half of the ground is one lake.
    double[] rising = {5, 5, 5, 5, 5, 6, 7, 8, 9, 10};
    List<Double> breaks = QuantileBreaks.breaks(rising, 2);
    assertEquals(List.of(5.5), breaks);
    // Half would end within the lake: it goes to the end that is nearer.
    assertEquals(
        List.of(7.0), QuantileBreaks.breaks(new double[] {5, 5, 5, 5, 5, 5, 5, 9, 9, 10}, 2));
    assertEquals(
        List.of(7.0), QuantileBreaks.breaks(new double[] {5, 5, 9, 9, 9, 9, 9, 9, 9, 10}, 2));
  }

  /** Fisher-Jenks examples of references.md, section 6: published and exhaustive results. */
  @Test
  void natural_findsThePublishedClasses() {
    assertEquals(List.of(7.0), FisherBreaks.breaks(new double[] {4, 5, 9, 10}, 2));
    assertEquals(
        List.of(15.0, 6.0), FisherBreaks.breaks(new double[] {1, 2, 4, 5, 7, 9, 10, 20}, 3));
    assertEquals(
        List.of(22.0, 12.0, 6.0),
        FisherBreaks.breaks(new double[] {0, 1, 2, 10, 11, 13, 14, 30, 31, 33}, 4));
  }

  @Test
  void natural_isAsGoodAsExhaustiveSearch() {
    for (int seed = 0; seed < 200; seed++) {
      Random random = new Random(seed);
      double[] rising =
          random.ints(5 + random.nextInt(8), 0, 40).sorted().asDoubleStream().toArray();
      int classes = 2 + random.nextInt(3);
      List<Double> breaks = new ArrayList<>(FisherBreaks.breaks(rising, classes));
      assertEquals(best(rising, 0, classes), cost(rising, breaks), 1e-9, "seed " + seed);
    }
  }

  @Test
  void natural_inBins_staysWithinTheStatedBound() {
    for (int seed = 0; seed < 20; seed++) {
      Random random = new Random(seed);
      double[] rising = new double[1500];
      for (int i = 0; i < rising.length; i++) {
        rising[i] = 100 * (1 + random.nextInt(4)) + 30 * random.nextGaussian();
      }
      Arrays.sort(rising);
      double exact = cost(rising, FisherBreaks.breaks(rising, 4, rising.length));
      double binned = cost(rising, FisherBreaks.breaks(rising, 4, 64));
      double bin = (rising[rising.length - 1] - rising[0]) / 64;
      assertTrue(binned >= exact - 1e-6, "seed " + seed);
      double off = Math.sqrt(binned / rising.length) - Math.sqrt(exact / rising.length);
      assertTrue(off <= 2 * bin, "seed " + seed + ": " + off + " of " + bin);
    }
  }

  @Test
  void emptyBands_areLeftOut() {
    Bands bands =
        BandMaker.withoutEmpty(List.of(2, 4, 5, 7), List.of(500.0, 300.0, 300.0), 100, 400);
    assertEquals(List.of(4, 7), bands.plyNumbers());
    assertEquals(List.of(300.0), bands.breaksM());
    assertEquals(
        List.of(2), BandMaker.withoutEmpty(List.of(2, 4), List.of(50.0), 100, 400).plyNumbers());
  }

  /** Land takes the listed plies but the sea's, from the level up; the level itself is sea. */
  @Test
  void sea_takesTheLevelAndBelow() {
    Bands bands =
        BandMaker.make(
            spec(TerrainSpec.NamedBands.EQUAL_INTERVAL, 100), terrain(40, 400), depths(4));
    assertEquals(List.of(1, 2, 4), bands.plyNumbers());
    assertEquals(250, bands.breaksM().get(0), 1e-9);
    assertEquals(4, bands.plyAt(100));
    assertEquals(4, bands.plyAt(50));
    assertEquals(2, bands.plyAt(100.001));
    Bands flooded =
        BandMaker.make(spec(TerrainSpec.NamedBands.SCALE, 500), terrain(40, 400), depths(4));
    assertEquals(List.of(4), flooded.plyNumbers());
    Bands dry =
        BandMaker.make(spec(TerrainSpec.NamedBands.EQUAL_INTERVAL, 0), terrain(40, 400), depths(4));
    assertEquals(List.of(1, 2, 4), dry.plyNumbers());
    Bands listed =
        BandMaker.make(
            spec(new TerrainSpec.BreakList(List.of(300.0, 60.0)), 100),
            terrain(40, 400),
            depths(4));
    assertEquals(List.of(300.0, Math.nextUp(100.0)), listed.breaksM());
  }

  /**
   * Flat ground, fewer elevations than plies, and one ply: breaks still fall strictly, highest
   * ground takes the top ply, and no ply is left without an elevation.
   */
  @Test
  void everyMethod_takesFewElevations() {
    double[][] grounds = {
      {7}, {7, 7, 7}, {5, 5, 9}, {1, 2, 3}, {-3, -3, 0, 1e-9}, {100, 100, 100, 100, 800}
    };
    for (TerrainSpec.NamedBands method : TerrainSpec.NamedBands.values()) {
      for (double[] ground : grounds) {
        for (int plies = 1; plies <= 6; plies++) {
          String what = method + " " + Arrays.toString(ground) + " " + plies;
          TerrainSpec spec =
              new TerrainSpec(
                  Path.of("t.asc"), null, "", numbers(plies), method, 0, TerrainOptions.PLAIN);
          Bands bands = BandMaker.make(spec, row(ground), depths(plies));
          assertEquals(bands.plyNumbers().size(), bands.breaksM().size() + 1, what);
          for (int i = 1; i < bands.breaksM().size(); i++) {
            assertTrue(bands.breaksM().get(i) < bands.breaksM().get(i - 1), what);
          }
          List<Integer> sorted = bands.plyNumbers().stream().sorted().distinct().toList();
          assertEquals(sorted, bands.plyNumbers(), what);
          double top = Arrays.stream(ground).max().orElseThrow();
          double bottom = Arrays.stream(ground).min().orElseThrow();
          assertEquals(bands.plyNumbers().get(0), bands.plyAt(top), what);
          assertEquals(
              bands.plyNumbers().get(bands.plyNumbers().size() - 1), bands.plyAt(bottom), what);
          boolean byCells =
              method == TerrainSpec.NamedBands.EQUAL_AREA
                  || method == TerrainSpec.NamedBands.NATURAL;
          for (long count : byCells ? counts(bands, ground) : List.of(1L)) {
            assertTrue(count > 0, what);
          }
        }
      }
    }
  }

  /** Only what lies inside an outline is parted among the plies. */
  @Test
  void outline_narrowsRangeAndCells() {
    Terrain all = row(0, 10, 20, 30, 500);
    Terrain inside = all.within(new boolean[] {true, true, true, true, false});
    assertEquals(30, inside.zmaxM(), 0);
    assertEquals(0, inside.zminM(), 0);
    for (TerrainSpec.NamedBands method :
        List.of(
            TerrainSpec.NamedBands.EQUAL_INTERVAL,
            TerrainSpec.NamedBands.EQUAL_AREA,
            TerrainSpec.NamedBands.NATURAL)) {
      TerrainSpec spec =
          new TerrainSpec(Path.of("t.asc"), null, "", numbers(2), method, 0, TerrainOptions.PLAIN);
      assertEquals(List.of(15.0), BandMaker.make(spec, inside, depths(2)).breaksM());
    }
    assertEquals(500, all.within(new boolean[5]).zmaxM(), 0);
  }

  private static Depths depths(int plies) {
    List<PlyDepth> out = new ArrayList<>();
    for (int i = 0; i < plies; i++) {
      out.add(
          new PlyDepth(
              new Ply(i + 1, "p" + i, 0, 1, 0, 0, ""),
              new Boundary(i, 0, 0),
              new Boundary(i + 1, 0, 0),
              i + 0.5,
              0));
    }
    return new Depths(out);
  }

  private static Terrain row(double... elevations) {
    Box box = new Box(0, 0, elevations.length, 1);
    Grid grid = new Grid(new CellFrame(0, 0, 1, 1, elevations.length, 1), elevations);
    double min = Arrays.stream(elevations).min().orElseThrow();
    double max = Arrays.stream(elevations).max().orElseThrow();
    return new Terrain(
        new RasterSource("t.asc", "", 1),
        new GroundFrame("", box, box, 1),
        grid,
        new Terrain.Range(min, max),
        VoidCells.NONE,
        null);
  }

  private static TerrainSpec spec(TerrainSpec.BandSpec method, double seaM) {
    TerrainOptions options =
        new TerrainOptions(
            List.of(),
            TerrainOptions.RasterSpec.AS_IT_SAYS,
            TerrainOptions.PlaceSpec.WHOLE,
            null,
            new GroundCover(new GroundCover.Sea(seaM, 4), GroundCover.Voids.FILL_SMALL, null));
    return new TerrainSpec(Path.of("t.asc"), null, "", List.of(1, 2, 4), method, 0, options);
  }

  private static Terrain terrain(double zminM, double zmaxM) {
    Box box = new Box(0, 0, 2, 1);
    Grid grid = new Grid(new CellFrame(0, 0, 1, 1, 2, 1), new double[] {zminM, zmaxM});
    return new Terrain(
        new RasterSource("t.asc", "", 1),
        new GroundFrame("", box, box, 1),
        grid,
        new Terrain.Range(zminM, zmaxM),
        VoidCells.NONE,
        null);
  }

  private static List<Integer> numbers(int n) {
    List<Integer> out = new ArrayList<>();
    for (int i = 1; i <= n; i++) {
      out.add(i);
    }
    return out;
  }

  private static List<Long> counts(Bands bands, double[] values) {
    List<Long> out = new ArrayList<>();
    for (int ply : bands.plyNumbers()) {
      out.add(Arrays.stream(values).filter(v -> bands.plyAt(v) == ply).count());
    }
    return out;
  }

  private static double best(double[] v, int from, int classes) {
    if (from == v.length) {
      return 0;
    }
    if (classes == 1) {
      return deviation(v, from, v.length);
    }
    double least = Double.POSITIVE_INFINITY;
    for (int end = from + 1; end <= v.length; end++) {
      least = Math.min(least, deviation(v, from, end) + best(v, end, classes - 1));
    }
    return least;
  }

  private static double cost(double[] v, List<Double> breaks) {
    double sum = 0;
    int end = v.length;
    List<Double> all = new ArrayList<>(breaks);
    all.add(Double.NEGATIVE_INFINITY);
    for (double low : all) {
      int start = end;
      while (start > 0 && v[start - 1] >= low) {
        start--;
      }
      assertTrue(start < end, "empty class under " + low);
      sum += deviation(v, start, end);
      end = start;
    }
    return sum;
  }

  private static double deviation(double[] v, int from, int to) {
    double mean = Arrays.stream(v, from, to).average().orElseThrow();
    return Arrays.stream(v, from, to).map(x -> (x - mean) * (x - mean)).sum();
  }
}
