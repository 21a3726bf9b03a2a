package plyscape.simulate;

import java.util.ArrayList;
import java.util.List;
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
import plyscape.gcode.GcodeParser;
import plyscape.gcode.GcodeWriter;
import plyscape.gcode.PassText;
import plyscape.gcode.ProgramHead;
import plyscape.grid.Box;
import plyscape.machine.Machine;
import plyscape.machine.Move;
import plyscape.machine.Tool;

/**
 * Cutting half a million short moves into a 240 mm panel, and comparing it with one pocket over all
 * of it.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@State(Scope.Benchmark)
@Fork(1)
@Warmup(iterations = 2, time = 1)
@Measurement(iterations = 3, time = 1)
public class SimulateBench {

  private static final double SIDE_MM = 240;

  /** Side of a simulation cell, mm. */
  @Param({"0.1", "0.05"})
  public double cellMm;

  /** Moves in the program. */
  @Param({"500000"})
  public int moves;

  private plyscape.simulate.Setup setup;
  private List<Cut> cuts;
  private List<Target> targets;
  private List<Tool> tools;

  /** Makes a program and parses it. */
  @Setup
  public void make() {
    var machine = Machine.USUAL;
    Tool tool = Tool.USUAL;
    List<Move> path = new ArrayList<>();
    path.add(Move.rapid(SIDE_MM / 2, SIDE_MM / 2, -4));
    for (double[] p : Relief.walk(moves, SIDE_MM, 3)) {
      path.add(Move.line(p[0], p[1], 1.5, 1800));
    }
    path.add(Move.rapid(SIDE_MM / 2, SIDE_MM / 2, -4));
    var header =
        new ProgramHead("bench", SIDE_MM, SIDE_MM, 9, machine, tool, 1.5, 60, "bench", List.of());
    String text = GcodeWriter.write(header, List.of(new PassText("bench", path)));
    tools = List.of(tool);
    cuts =
        List.of(new Cut(GcodeParser.parse("bench.nc", text, machine, SIDE_MM, SIDE_MM, 9), tool));
    Box panel = new Box(0, 0, SIDE_MM, SIDE_MM);
    setup = new plyscape.simulate.Setup(panel, 9, panel, machine, cellMm);
    targets =
        List.of(
            new Target(2, 1.5, new double[][] {{0, 0, SIDE_MM, 0, SIDE_MM, SIDE_MM, 0, SIDE_MM}}));
  }

  /** The surface alone. */
  @Benchmark
  public Object cut() {
    HeightField field = HeightField.uncut(setup.panel(), cellMm);
    Simulator.cut(setup, cuts, field);
    return field;
  }

  /** The surface and the comparison. */
  @Benchmark
  public CutResult cutAndCompare() {
    return Simulator.run(setup, cuts, targets, tools);
  }
}
