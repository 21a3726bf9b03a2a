package plyscape.region;

import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import plyscape.bands.Bands;
import plyscape.bench.Relief;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.Grid;
import plyscape.grid.GroundFrame;
import plyscape.terrain.RasterSource;
import plyscape.terrain.Terrain;
import plyscape.terrain.VoidCells;

/** Contours and the whole tiling of made ground in nine plies on a 400 mm panel. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@State(Scope.Benchmark)
@Fork(1)
@Warmup(iterations = 2, time = 2)
@Measurement(iterations = 3, time = 2)
public class TilingBench {

  private static final double PANEL_MM = 400;

  /** Cells along a side. */
  @Param({"1024", "4096"})
  public int side;

  private Terrain terrain;
  private Bands bands;

  /** Makes the ground. */
  @Setup
  public void make() {
    double[] z = Relief.make(side, side, 1);
    terrain = terrain(z, side);
    bands = bands(z);
  }

  static Terrain terrain(double[] z, int side) {
    Box panel = new Box(0, 0, PANEL_MM, PANEL_MM);
    double cell = PANEL_MM / side;
    Grid grid = new Grid(new CellFrame(0, 0, cell, cell, side, side), z);
    double min = Arrays.stream(z).min().orElseThrow();
    double max = Arrays.stream(z).max().orElseThrow();
    return new Terrain(
        new RasterSource("made", "", 1),
        new GroundFrame("", new Box(0, 0, side, side), panel, 1),
        grid,
        new Terrain.Range(min, max),
        VoidCells.NONE,
        null);
  }

  static Bands bands(double[] z) {
    List<Double> breaks = Arrays.stream(Relief.breaks(z, 9)).boxed().toList();
    return new Bands(IntStream.rangeClosed(1, 9).boxed().toList(), breaks);
  }

  /** Outlines only. */
  @Benchmark
  public Object contours() {
    ContourLattice lattice = ContourLattice.of(terrain.elevationM(), terrain.frame().panel());
    return ContourTracer.trace(lattice, terrain.frame().panel(), bands.breaksM());
  }

  /** Regions and nested pockets, nothing merged. */
  @Benchmark
  public Tiling tiling() {
    return TilingBuilder.build(
        terrain, bands, List.of(), new TilingRules(9, 0, 0, null), new Warnings());
  }
}
