package plyscape.planner;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.job.JobReader;
import plyscape.terrain.AscText;

/** A small job from a seed: ground, plies, panel, machine and cutters, some of them odd. */
public final class SeededJob {

  private final Random random;
  private final long seed;

  public SeededJob(long seed) {
    this.seed = seed;
    random = new Random(seed * 7919 + 13);
  }

  /** Writes the job's files into a folder and reads it. */
  public Job in(Path folder) {
    try {
      Files.createDirectories(folder);
      int plies = 3 + random.nextInt(3);
      Files.writeString(folder.resolve("layup.yaml"), layup(plies));
      Files.writeString(folder.resolve("terrain.asc"), terrain());
      Path job = Files.writeString(folder.resolve("job.yaml"), job(plies));
      return JobReader.read(job, List.of(), new Warnings());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  private static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }

  private String layup(int plies) {
    StringBuilder yaml = new StringBuilder("name: seed " + seed + "\nglue_line: 0.04\nplies:\n");
    for (int p = 1; p <= plies; p++) {
      yaml.append(
          text(
              "  - {name: ply %d, colour: \"#%02x8040\", thickness: %.3f}%n",
              p, 40 * p, p == plies ? 3 : between(0.5, 1.5)));
    }
    return yaml.toString().replace("\r", "");
  }

  /** Hills as wide as a few cutters, or about as narrow as one. */
  private String terrain() {
    int side = 24 + random.nextInt(30);
    double[][] hills = new double[12 + random.nextInt(30)][];
    for (int h = 0; h < hills.length; h++) {
      hills[h] =
          new double[] {
            between(0, side), between(0, side), between(1.5, side / 3.0), between(-100, 100)
          };
    }
    return AscText.of(
        side,
        side,
        (column, row) -> {
          double z = 500;
          for (double[] hill : hills) {
            double dx = (column - hill[0]) / hill[2];
            double dy = (row - hill[1]) / hill[2];
            z += hill[3] * Math.exp(-dx * dx - dy * dy);
          }
          return z;
        });
  }

  private String job(int plies) {
    List<String> cut = new ArrayList<>();
    for (int p = 1; p < plies; p++) {
      cut.add("ply " + p);
    }
    String[] zeros = {"lower-left", "lower-right", "upper-left", "upper-right", "centre"};
    double[] borders = {0, 0, 1.5, 4};
    double side = between(16, 22);
    return text(
        """
        layup: layup.yaml
        terrain: {file: terrain.asc, plies: %s, smoothing: %.2f, crs: "EPSG:32632"}
        panel: {width: %.3f, height: %.3f, border: %.1f}
        machine: {travel: [50, 50, 40], zero: %s, zero_z: %s, direction: %s, tool_change: %d}
        top: %s
        tools:
        %s\
        """,
        cut,
        random.nextInt(3) * 0.4,
        side,
        side * between(0.8, 1),
        borders[random.nextInt(borders.length)],
        zeros[random.nextInt(zeros.length)],
        random.nextInt(4) == 0 ? "bottom" : "top",
        random.nextInt(3) == 0 ? "conventional" : "climb",
        random.nextInt(3) == 0 ? 0 : 20,
        random.nextInt(3) == 0 ? "mid" : "leave",
        tools());
  }

  private String tools() {
    double d = between(1, 2.4);
    return switch ((int) (seed % 10)) {
      case 0 -> tool(d, 12, 1.5, 0.45);
      case 1 -> tool(6, 16, 2, 0.45) + tool(3, 12, 2, 0.45) + tool(1.5, 8, 1, 0.45);
      case 2 -> tool(2.5 * d, between(1, 3), 1, 0.4) + tool(d, 12, 1.5, 0.4);
      case 3 -> tool(2 * d, 12, 2, 0.9) + tool(d, 12, 1, 0.9);
      case 4 -> tool(1.5 * d, 12, between(0.15, 0.3), 0.5);
      case 5 -> tool(45, 30, 3, 0.4) + tool(d, 12, 1.5, 0.45);
      case 6 -> tool(d, 12, 2, 0.3) + tool(1.02 * d, 12, 0.6, 0.5) + tool(1.3 * d, 12, 2, 0.7);
      case 7 -> tool(d, between(0.8, 2.5), 0.5, 0.45) + tool(1.8 * d, 12, 1.5, 0.45);
      case 8 -> tool(d, 12, 4, 0.08) + tool(3 * d, 12, 4, 1);
      default ->
          tool(d, 12, between(0.4, 2), between(0.2, 0.8))
              + tool(d * 1.7, 12, between(0.4, 2), between(0.2, 0.8))
              + tool(d * 3.1, 12, between(0.4, 2), between(0.2, 0.8))
              + tool(d * 4.4, 12, between(0.4, 2), between(0.2, 0.8));
    };
  }

  private String tool(double diameter, double flute, double stepdown, double stepover) {
    return text(
        "  - {name: end mill %.3f, diameter: %.3f, flute_length: %.2f, stepdown: %.3f, stepover:"
            + " %.2f, feed: 1500}\n",
        diameter, diameter, flute, Math.min(stepdown, flute), stepover);
  }
}
