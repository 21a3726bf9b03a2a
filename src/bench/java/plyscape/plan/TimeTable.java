package plyscape.plan;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import plyscape.bands.BandMaker;
import plyscape.bands.Bands;
import plyscape.bench.Relief;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.job.Job;
import plyscape.job.JobReader;
import plyscape.job.TerrainSpec;
import plyscape.layup.DepthModel;
import plyscape.layup.Depths;
import plyscape.machine.CuttingData;
import plyscape.machine.Form;
import plyscape.machine.Machine;
import plyscape.machine.MotionModel;
import plyscape.machine.Tool;
import plyscape.region.Tiling;
import plyscape.region.TilingBuilder;
import plyscape.region.TilingRules;
import plyscape.terrain.Terrain;
import plyscape.terrain.TerrainReader;
import plyscape.toolpath.PathPlanner;
import plyscape.toolpath.bound.LowerBound;
import plyscape.toolpath.task.PocketLevel;
import plyscape.toolpath.task.ToolRun;
import plyscape.zones.ZoneReader;

/**
 * How near the plans of eight panels come to the lower bound, and where the rest of the time goes:
 * Tarn Hollow, the Eildon Hills, two made grounds as hilly as those, two ranges of hills and two
 * rough reliefs; nine plies of 0.9 mm, 240 x 240 mm, cutters of 6, 3 and 1.5 mm. Run by
 * scripts/bench-times.sh.
 */
public final class TimeTable {

  private static final List<Tool> TOOLS =
      List.of(
          Tool.USUAL.named("end mill 6").with(Form.of(Tool.Shape.FLAT, 6, 16)),
          Tool.USUAL,
          new Tool(
              "end mill 1.5",
              Form.of(Tool.Shape.FLAT, 1.5, 8),
              new CuttingData(18_000, 1200, 300, 1, 0.45)));

  /** Cells along a side of made ground. */
  private static final int SIDE = 600;

  private final Warnings warnings = new Warnings();
  private final Job tarnHollow =
      JobReader.read(Path.of("samples/tarn-hollow/job.yaml"), List.of(), warnings);
  private final Depths depths =
      DepthModel.depths(tarnHollow.layup(), tarnHollow.allowance(), false);
  private final boolean alone;

  private TimeTable(boolean alone) {
    this.alone = alone;
  }

  /**
   * Arguments: names of jobs to run (all if none), {@code --alone} to also plan with the 1.5 mm
   * cutter alone.
   */
  public static void main(String[] args) {
    List<String> wanted = Arrays.stream(args).filter(a -> !a.startsWith("--")).toList();
    var table = new TimeTable(Arrays.asList(args).contains("--alone"));
    for (String name :
        List.of(
            "tarn-hollow",
            "eildon",
            "downs-1",
            "downs-2",
            "hills-1",
            "hills-2",
            "relief-1",
            "relief-2")) {
      if (wanted.isEmpty() || wanted.contains(name)) {
        table.run(name);
      }
    }
  }

  private void run(String name) {
    Tiling tiling = tiling(name);
    List<PocketLevel> levels = new ArrayList<>();
    for (Map.Entry<Integer, MultiPolygon> pocket : tiling.pockets().entrySet()) {
      if (pocket.getKey() > 1) {
        MultiPolygon exposed =
            tiling
                .exposed()
                .getOrDefault(pocket.getKey(), new GeometryFactory().createMultiPolygon());
        levels.add(
            new PocketLevel(
                pocket.getKey(),
                depths.of(pocket.getKey()).targetMm(),
                pocket.getValue(),
                exposed,
                depths.of(pocket.getKey()).ply().grainDeg()));
      }
    }
    Machine machine = tarnHollow.machine();
    long start = System.nanoTime();
    List<ToolRun> runs = PathPlanner.plan(levels, TOOLS, machine, tiling.carved(), warnings);
    double planned = (System.nanoTime() - start) / 1e9;
    double bound = LowerBound.seconds(levels, TOOLS, tiling.carved(), LowerBound.CELL_MM);
    List<TimeAudit> parts = new ArrayList<>();
    TimeAudit audit = new TimeAudit(tiling.carved(), machine);
    TimeAudit before = audit;
    for (ToolRun run : runs) {
      before = before.next();
      before.add(run);
      parts.add(before);
      audit.addSums(before);
    }
    System.out.printf(
        Locale.ROOT,
        "%s: bound %.0f s of %.0f s = %.3f (planned in %.1f s)%n",
        name,
        bound,
        audit.totalS,
        bound / audit.totalS,
        planned);
    System.out.printf(Locale.ROOT, "  %-56s %9s  %7s", "", "s", "");
    runs.forEach(run -> System.out.printf(Locale.ROOT, "%8.1f", run.tool().diameterMm()));
    System.out.println(" mm");
    row("lower bound", bound, audit.totalS, parts, a -> Double.NaN);
    row(
        "dearer cutter or more depths than the bound's",
        audit.idealS - bound,
        audit.totalS,
        parts,
        a -> a.idealS);
    row(
        "less than the stepover bitten (walls, corners)",
        audit.narrowS,
        audit.totalS,
        parts,
        a -> a.narrowS);
    row("feed reduced in slots", audit.slowFeedS, audit.totalS, parts, a -> a.slowFeedS);
    row("air at feed (links, ground cut before)", audit.airS, audit.totalS, parts, a -> a.airS);
    row("entries", audit.entryS, audit.totalS, parts, a -> a.entryS);
    row("acceleration", audit.accelerationS, audit.totalS, parts, a -> a.accelerationS);
    row(
        "travel (" + Math.round(audit.rapidMm) + " mm rapids)",
        audit.travelS,
        audit.totalS,
        parts,
        a -> a.travelS);
    row(audit.lifts + " lifts", audit.liftS, audit.totalS, parts, a -> a.liftS);
    row("total", audit.totalS, audit.totalS, parts, a -> a.totalS);
    System.out.printf(
        Locale.ROOT,
        "  %d moves, %d arcs, %.0f mm cut, passes %s%n",
        audit.moves,
        audit.arcs,
        audit.cutMm,
        runs.stream().map(r -> r.passes().size()).toList());
    if (alone) {
      double seconds = alone(levels, machine, tiling.carved());
      System.out.printf(
          Locale.ROOT,
          "  every level in full with the 1.5 mm cutter alone: %.0f s, %.2f times as long%n",
          seconds,
          seconds / audit.totalS);
    }
  }

  private static void row(
      String what,
      double seconds,
      double total,
      List<TimeAudit> parts,
      ToDoubleFunction<TimeAudit> part) {
    StringBuilder line = new StringBuilder();
    line.append(
        String.format(
            Locale.ROOT, "  %-56s %7.0f s %5.1f %%", what, seconds, 100 * seconds / total));
    for (TimeAudit audit : parts) {
      double s = part.applyAsDouble(audit);
      line.append(Double.isNaN(s) ? "" : String.format(Locale.ROOT, " %7.0f", s));
    }
    System.out.println(line);
  }

  /** Each level over all of its pocket, from the level above, planned as a job of its own. */
  private double alone(List<PocketLevel> levels, Machine machine, Box carved) {
    double seconds = 0;
    double above = 0;
    for (PocketLevel level : levels) {
      var only =
          new PocketLevel(
              level.plyNumber(), level.depthMm() - above, level.pocket(), level.pocket());
      above = level.depthMm();
      for (ToolRun run :
          PathPlanner.plan(List.of(only), TOOLS.subList(2, 3), machine, carved, warnings)) {
        seconds +=
            new MotionModel(machine).times(0, 0, -machine.safeHeightMm(), run.moves()).totalS();
      }
    }
    return seconds;
  }

  private Tiling tiling(String name) {
    Job.PanelSpec panel = tarnHollow.panel();
    String[] kind = name.split("-", 2);
    switch (kind[0]) {
      case "downs":
        return made(Relief.downs(SIDE, SIDE, Integer.parseInt(kind[1])));
      case "hills":
        return made(Relief.hills(SIDE, SIDE, Integer.parseInt(kind[1])));
      case "relief":
        return made(Relief.make(SIDE, SIDE, Integer.parseInt(kind[1])));
      default:
    }
    TerrainSpec spec = tarnHollow.terrain();
    if (name.equals("eildon")) {
      spec =
          new TerrainSpec(
              Path.of("samples/eildon/eildon_utm30_60m.tif"),
              null,
              "",
              IntStream.rangeClosed(1, 9).boxed().toList(),
              TerrainSpec.NamedBands.SCALE,
              0.8);
    }
    Terrain terrain = TerrainReader.read(spec, panel, 1.5, warnings);
    Bands bands = BandMaker.make(spec, terrain, depths);
    var zones =
        name.equals("eildon")
            ? List.<plyscape.zones.Zone>of()
            : ZoneReader.read(tarnHollow.zones(), terrain.frame(), warnings);
    return TilingBuilder.build(terrain, bands, zones, new TilingRules(9, 1.5, 1), warnings);
  }

  /** Made ground, written as a raster and read as any job's, with a job's usual smoothing. */
  private Tiling made(double[] z) {
    int side = SIDE;
    StringBuilder text = new StringBuilder();
    text.append("ncols 600\nnrows 600\nxllcorner 0\nyllcorner 0\ncellsize 10\n");
    for (int row = side - 1; row >= 0; row--) {
      for (int column = 0; column < side; column++) {
        text.append(String.format(Locale.ROOT, "%.3f ", z[row * side + column]));
      }
      text.append('\n');
    }
    try {
      Path file = Files.createTempFile("relief", ".asc");
      try {
        Files.writeString(file, text);
        TerrainSpec spec =
            new TerrainSpec(
                file,
                null,
                "",
                IntStream.rangeClosed(1, 9).boxed().toList(),
                TerrainSpec.NamedBands.SCALE,
                0.4);
        Terrain terrain = TerrainReader.read(spec, tarnHollow.panel(), 1.5, warnings);
        Bands bands = BandMaker.make(spec, terrain, depths);
        return TilingBuilder.build(terrain, bands, List.of(), new TilingRules(9, 1.5, 1), warnings);
      } finally {
        Files.delete(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
