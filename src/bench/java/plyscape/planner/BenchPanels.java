package plyscape.planner;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.IntStream;
import plyscape.bands.BandMaker;
import plyscape.bench.Relief;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.job.JobReader;
import plyscape.job.TerrainOptions;
import plyscape.job.TerrainSpec;
import plyscape.layup.DepthModel;
import plyscape.layup.Depths;
import plyscape.machine.CuttingData;
import plyscape.machine.Form;
import plyscape.machine.Tool;
import plyscape.plan.Plan;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;
import plyscape.region.Tiling;
import plyscape.region.TilingBuilder;
import plyscape.region.TilingRules;
import plyscape.terrain.Terrain;
import plyscape.terrain.TerrainReader;
import plyscape.zones.Zone;
import plyscape.zones.ZoneReader;

/**
 * The panels of {@link TimeTable}: real and made ground of nine plies of 0.9 mm, 240 x 240 mm, with
 * cutters of 6, 3 and 1.5 mm; made towns and rivers ({@link ThinStreets}); and any job.
 */
final class BenchPanels {

  /** All made and bundled ones, in the order of the table. */
  static final List<String> NAMES =
      List.of(
          "tarn-hollow",
          "eildon",
          "downs-1",
          "downs-2",
          "hills-1",
          "hills-2",
          "relief-1",
          "relief-2",
          "streets-1",
          "streets-4",
          "rivers-1",
          "rivers-4");

  private static final List<Tool> TOOLS =
      List.of(
          new Tool("end mill 6", Form.of(Tool.Shape.FLAT, 6, 16), Tool.USUAL.cutting()),
          Tool.USUAL,
          new Tool(
              "end mill 1.5",
              Form.of(Tool.Shape.FLAT, 1.5, 8),
              new CuttingData(18_000, 1200, 300, 1, 0.45)));

  /** Cells along a side of made ground. */
  private static final int SIDE = 600;

  private final Warnings warnings;
  private final Job tarnHollow;
  private final Depths depths;

  BenchPanels(Warnings warnings) {
    this.warnings = warnings;
    tarnHollow = JobReader.read(Path.of("samples/tarn-hollow/job.yaml"), List.of(), warnings);
    depths = DepthModel.depths(tarnHollow.layup(), tarnHollow.allowance(), false);
  }

  /** The panel of a name, or that of a job file. */
  BenchPanel of(String name) {
    String[] kind = name.split("-", 2);
    return switch (kind[0]) {
      case "streets", "rivers" -> thin(kind[0], Integer.parseInt(kind[1]));
      case "tarn", "eildon", "downs", "hills", "relief" ->
          BenchPanel.of(tiling(name), depths, TOOLS, tarnHollow.machine());
      default -> job(Path.of(name));
    };
  }

  private BenchPanel job(Path file) {
    Job job = JobReader.read(file, List.of(), warnings);
    PlanOptions regionsOnly = PlanOptions.preview(Set.of());
    Plan plan = Planner.plan(job, regionsOnly, Progress.NONE, warnings);
    return BenchPanel.of(plan.tiling(), plan.depths(), job.tools(), job.machine());
  }

  private BenchPanel thin(String kind, int seed) {
    try {
      Path folder = Files.createTempDirectory("thin");
      try {
        return job(ThinStreets.write(folder, kind, seed));
      } finally {
        for (String file : ThinStreets.FILES) {
          Files.deleteIfExists(folder.resolve(file));
        }
        Files.delete(folder);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Tiling tiling(String name) {
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
              0.8,
              TerrainOptions.PLAIN);
    }
    Terrain terrain = TerrainReader.read(spec, tarnHollow.panel(), 1.5, warnings);
    List<Zone> zones =
        name.equals("eildon")
            ? List.of()
            : ZoneReader.read(tarnHollow.zones(), terrain.frame(), warnings);
    return TilingBuilder.build(
        terrain,
        BandMaker.make(spec, terrain, depths),
        zones,
        new TilingRules(9, 1.5, 1, null),
        warnings);
  }

  /** Made ground, written as a raster and read as any job's, with a job's usual smoothing. */
  private Tiling made(double[] z) {
    try {
      Path file = Files.createTempFile("relief", ".asc");
      try {
        Files.writeString(file, raster(z, SIDE));
        TerrainSpec spec =
            new TerrainSpec(
                file,
                null,
                "",
                IntStream.rangeClosed(1, 9).boxed().toList(),
                TerrainSpec.NamedBands.SCALE,
                0.4,
                TerrainOptions.PLAIN);
        Terrain terrain = TerrainReader.read(spec, tarnHollow.panel(), 1.5, warnings);
        return TilingBuilder.build(
            terrain,
            BandMaker.make(spec, terrain, depths),
            List.of(),
            new TilingRules(9, 1.5, 1, null),
            warnings);
      } finally {
        Files.delete(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Square ground of 10 m cells as an ESRI grid, its lower left corner at 0, 0. */
  static String raster(double[] z, int side) {
    StringBuilder text = new StringBuilder();
    text.append("ncols ").append(side).append("\nnrows ").append(side);
    text.append("\nxllcorner 0\nyllcorner 0\ncellsize 10\n");
    for (int row = side - 1; row >= 0; row--) {
      for (int column = 0; column < side; column++) {
        text.append(String.format(Locale.ROOT, "%.3f ", z[row * side + column]));
      }
      text.append('\n');
    }
    return text.toString();
  }
}
