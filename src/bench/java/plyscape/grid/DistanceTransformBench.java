package plyscape.grid;

import java.util.concurrent.TimeUnit;
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
import plyscape.bench.Relief;

/** Exact distance transform of made ground. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@State(Scope.Benchmark)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class DistanceTransformBench {

  /** Cells along a side. */
  @Param({"1024", "4096"})
  public int side;

  private boolean[] source;

  /** Makes the ground. */
  @Setup
  public void make() {
    source = Relief.low(Relief.make(side, side, 1));
  }

  /** Squared distances. */
  @Benchmark
  public int[] transform() {
    return DistanceTransform.squared(source, side, side);
  }
}
