package plyscape.gcode;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
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
import plyscape.bench.Relief;
import plyscape.machine.Machine;
import plyscape.machine.MotionModel;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.toolpath.motion.ArcFitter;
import plyscape.toolpath.task.PathOptions;

/** Text to moves and back, their time, and arcs, for half a million moves. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@State(Scope.Benchmark)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class ParseBench {

  private static final int MOVES = 500_000;
  private static final double SIDE_MM = 240;

  private final Machine machine = Machine.USUAL;
  private ProgramHead header;
  private List<Move> moves;
  private String text;

  /** Makes a program. */
  @Setup
  public void make() {
    Tool tool = Tool.USUAL;
    header =
        new ProgramHead("bench", SIDE_MM, SIDE_MM, 9, machine, tool, 1.5, 60, "bench", List.of());
    moves = new ArrayList<>();
    moves.add(Move.rapid(SIDE_MM / 2, SIDE_MM / 2, -4));
    for (double[] p : Relief.walk(MOVES, SIDE_MM, 3)) {
      moves.add(Move.line(p[0], p[1], 1.5, 1800));
    }
    moves.add(Move.rapid(SIDE_MM / 2, SIDE_MM / 2, -4));
    text = write();
  }

  /** Moves to text. */
  @Benchmark
  public String write() {
    return GcodeWriter.write(header, List.of(new PassText("bench", moves)));
  }

  /** Text to moves. */
  @Benchmark
  public Program parse() {
    return GcodeParser.parse("bench.nc", text, machine, SIDE_MM, SIDE_MM, 9);
  }

  /** Time under look-ahead. */
  @Benchmark
  public double time() {
    return new MotionModel(machine).times(0, 0, -4, moves).totalS();
  }

  /** Lines to arcs. */
  @Benchmark
  public List<Move> arcs() {
    return ArcFitter.fit(
        0, 0, -4, moves, PathOptions.ARC_TOLERANCE_MM, PathOptions.ARC_TOLERANCE_MM);
  }
}
