package plyscape.toolpath.ring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
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
import plyscape.region.TilingBuilder;
import plyscape.region.TilingRules;
import plyscape.terrain.RasterSource;
import plyscape.terrain.Terrain;
import plyscape.terrain.VoidCells;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.PocketEdges;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.task.PocketLevel;

/**
 * All rings of one pocket of made ground on a 240 mm panel, for a 3 mm cutter: by distance field,
 * and by JTS buffers.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@State(Scope.Benchmark)
@Fork(1)
@Warmup(iterations = 2, time = 2)
@Measurement(iterations = 3, time = 2)
public class OffsetBench {

  private static final double RADIUS_MM = 1.5;
  private static final double SPACING_MM = 1.35;

  private MultiPolygon pocket;
  private Lattice lattice;

  /** Makes the pocket. */
  @Setup
  public void make() {
    int side = 600;
    double[] z = Relief.make(side, side, 1);
    Box carved = new Box(6, 6, 234, 234);
    double cell = carved.width() / side;
    Grid grid = new Grid(new CellFrame(6, 6, cell, cell, side, side), z);
    double[] breaks = Relief.breaks(z, 9);
    var frame = new GroundFrame("", new Box(0, 0, side, side), carved, 1);
    Terrain terrain =
        new Terrain(
            new RasterSource("made", "", 1),
            frame,
            grid,
            new Terrain.Range(
                Arrays.stream(z).min().orElseThrow(), Arrays.stream(z).max().orElseThrow()),
            VoidCells.NONE,
            null);
    Bands bands =
        new Bands(
            IntStream.rangeClosed(1, 9).boxed().toList(), Arrays.stream(breaks).boxed().toList());
    pocket =
        TilingBuilder.build(
                terrain, bands, List.of(), new TilingRules(9, 1.5, 1, null), new Warnings())
            .pockets()
            .get(5);
    lattice = Lattice.over(carved, 0.75);
  }

  /** By distance field, the wall ring exact. */
  @Benchmark
  public List<Ring> field() {
    var empty = pocket.getFactory().createMultiPolygon();
    var level =
        new LevelField(
            new PocketLevel(5, 3, pocket, empty),
            new DistanceField(new PocketEdges(pocket), lattice));
    var tracer = new RingTracer(lattice);
    List<Ring> rings = new ArrayList<>(level.wallRings(tracer, RADIUS_MM, 0));
    rings.addAll(
        level.innerRings(
            tracer,
            level.field().distance,
            new LevelField.Spacing(RADIUS_MM, SPACING_MM, SPACING_MM),
            null));
    return rings;
  }

  /** By JTS, each ring from the pocket itself. */
  @Benchmark
  public List<Geometry> buffers() {
    // 16 segments a quarter: a chord error of 0.0018 mm at this radius, as near as the field's wall
    // ring.
    var parameters = new BufferParameters(16);
    List<Geometry> rings = new ArrayList<>();
    for (double d = RADIUS_MM; ; d += SPACING_MM) {
      Geometry ring = BufferOp.bufferOp(pocket, -d, parameters);
      if (ring.isEmpty()) {
        return rings;
      }
      rings.add(ring);
    }
  }
}
