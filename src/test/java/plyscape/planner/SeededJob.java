package plyscape.planner;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import plyscape.terrain.AscText;

/** A small job from a seed: ground, plies, panel, machine and cutters, some of them odd. */
public final class SeededJob extends RandomJob {

  public SeededJob(long seed) {
    super(seed, new Random(seed * 7919 + 13));
  }

  @Override
  Map<String, String> files() {
    Map<String, String> files = new LinkedHashMap<>();
    int plies = 3 + random.nextInt(3);
    files.put("layup.yaml", layup(plies, 40));
    files.put("terrain.asc", terrain());
    files.put("job.yaml", job(plies));
    return files;
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
