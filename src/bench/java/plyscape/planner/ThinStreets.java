package plyscape.planner;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import plyscape.bench.Relief;

/**
 * Jobs on made ground with streets or rivers hardly wider than the smallest cutter: 200 x 200 mm,
 * cutters of 6, 3 and 1.5 mm. Streets are bent grids that meet at all angles; rivers wind downhill
 * and run together. The same for the same seed.
 */
final class ThinStreets {

  /** What {@link #write} writes. */
  static final List<String> FILES = List.of("ground.asc", "lines.geojson", "job.yaml");

  /** Ground, m: 10 m cells; a panel mm is then about 25 m. */
  private static final int SIDE = 480;

  private static final double EXTENT = SIDE * 10.0;

  /** Its lower left corner, m in UTM zone 30. */
  private static final int WEST = 500_000;

  private static final int SOUTH = 6_000_000;

  private final Random random;
  private final List<double[][]> lines = new ArrayList<>();

  private ThinStreets(int seed) {
    random = new Random(seed);
  }

  /**
   * Writes a job into a folder.
   *
   * @param kind {@code streets} or {@code rivers}
   * @return the job file
   */
  static Path write(Path folder, String kind, int seed) throws IOException {
    ThinStreets map = new ThinStreets(seed);
    double[] ground = Relief.hills(SIDE, SIDE, 10 + seed);
    boolean streets = kind.equals("streets");
    if (streets) {
      map.streets();
    } else {
      map.rivers(ground);
    }
    String raster =
        BenchPanels.raster(ground, SIDE)
            .replace("xllcorner 0", "xllcorner " + WEST)
            .replace("yllcorner 0", "yllcorner " + SOUTH);
    Files.writeString(folder.resolve("ground.asc"), raster);
    Files.writeString(folder.resolve("lines.geojson"), map.geoJson());
    // Between 1.05 and 1.4 times the smallest cutter: the worst widths.
    double width = 1.5 + 0.1 * (1 + seed % 4);
    Path job = folder.resolve("job.yaml");
    Files.writeString(job, yaml(streets ? "ply: walnut" : "sink: 1", width));
    return job;
  }

  private static String yaml(String ply, double width) {
    Path samples = Path.of("samples").toAbsolutePath();
    return String.format(
        Locale.ROOT,
        """
        layup: %s/tarn-hollow/layup.yaml
        terrain: {file: ground.asc, crs: "EPSG:32630", plies: [limestone, heather, meadow, barley, brick, wood], smoothing: 0.4}
        panel: {width: 200, height: 200, border: 5}
        zones:
          - {name: lines, file: lines.geojson, %s, width: %.2f}
        tools:
          - {name: end mill 6, shape: flat, diameter: 6.0, flute_length: 22, flutes: 2, rpm: 16000, feed: 2400, plunge: 600, stepdown: 3.0, stepover: 0.45}
          - {name: end mill 3, shape: flat, diameter: 3.0, flute_length: 12, flutes: 2, rpm: 18000, feed: 1800, plunge: 500, stepdown: 2.0, stepover: 0.45}
          - {name: end mill 1.5, shape: flat, diameter: 1.5, flute_length: 12, flutes: 2, rpm: 20000, feed: 1000, plunge: 300, stepdown: 1.0, stepover: 0.40}
        """,
        samples,
        ply,
        width);
  }

  /** Three quarters, each a grid of its own direction, a little bent, with gaps. */
  private void streets() {
    for (int quarter = 0; quarter < 3; quarter++) {
      double turn = random.nextDouble() * Math.PI / 2;
      double x = EXTENT * (0.25 + 0.5 * random.nextDouble());
      double y = EXTENT * (0.25 + 0.5 * random.nextDouble());
      double block = 170 + 90 * random.nextDouble();
      for (int i = -4; i <= 4; i++) {
        for (int side = 0; side < 2; side++) {
          double way = turn + side * Math.PI / 2;
          double from = -block * (2 + random.nextInt(3));
          double sx = x + from * Math.cos(way) - i * block * Math.sin(way);
          double sy = y + from * Math.sin(way) + i * block * Math.cos(way);
          walk(sx, sy, way, block / 3, 9 + random.nextInt(12), 0.03);
        }
      }
    }
    for (int lane = 0; lane < 8; lane++) {
      double turn = random.nextDouble() * 2 * Math.PI;
      walk(
          EXTENT * random.nextDouble(), EXTENT * random.nextDouble(), turn, 60, 30 + lane * 4, 0.2);
    }
  }

  private void walk(double x0, double y0, double turn0, double step, int steps, double bend) {
    double x = x0;
    double y = y0;
    double turn = turn0;
    double[][] line = new double[steps + 1][];
    for (int i = 0; i <= steps; i++) {
      line[i] = new double[] {x, y};
      turn += bend * random.nextGaussian();
      x += step * Math.cos(turn);
      y += step * Math.sin(turn);
    }
    lines.add(line);
  }

  /** Springs run down the slope until they leave the ground, lie in a hollow or meet a river. */
  private void rivers(double[] ground) {
    boolean[] wet = new boolean[SIDE * SIDE];
    for (int spring = 0; spring < 60; spring++) {
      double x = EXTENT * random.nextDouble();
      double y = EXTENT * random.nextDouble();
      double turn = random.nextDouble() * 2 * Math.PI;
      List<double[]> line = new ArrayList<>();
      List<Integer> own = new ArrayList<>();
      for (int step = 0; step < 90; step++) {
        int column = (int) (x / 10);
        int row = (int) (y / 10);
        if (column < 3 || row < 3 || column >= SIDE - 3 || row >= SIDE - 3) {
          break;
        }
        line.add(new double[] {x, y});
        int cell = row * SIDE + column;
        if (wet[cell]) {
          break;
        }
        for (int near = -2; near <= 2; near++) {
          for (int beside = -2; beside <= 2; beside++) {
            own.add(cell + near * SIDE + beside);
          }
        }
        double down =
            Math.atan2(
                ground[cell - 3 * SIDE] - ground[cell + 3 * SIDE],
                ground[cell - 3] - ground[cell + 3]);
        double off = Math.IEEEremainder(down - turn, 2 * Math.PI);
        turn += Math.max(-0.6, Math.min(0.6, off)) + 0.25 * random.nextGaussian();
        x += 40 * Math.cos(turn);
        y += 40 * Math.sin(turn);
      }
      own.forEach(cell -> wet[cell] = true);
      if (line.size() > 6) {
        lines.add(line.toArray(double[][]::new));
      }
    }
  }

  private String geoJson() {
    StringBuilder text = new StringBuilder("{\"type\": \"FeatureCollection\",\n");
    text.append("\"crs\": {\"type\": \"name\", \"properties\": ");
    text.append("{\"name\": \"urn:ogc:def:crs:EPSG::32630\"}},\n\"features\": [\n");
    for (int i = 0; i < lines.size(); i++) {
      text.append(i > 0 ? ",\n" : "");
      text.append("{\"type\": \"Feature\", \"properties\": {}, \"geometry\": ");
      text.append("{\"type\": \"LineString\", \"coordinates\": [");
      double[][] line = lines.get(i);
      for (int p = 0; p < line.length; p++) {
        text.append(p > 0 ? ", " : "");
        text.append(
            String.format(Locale.ROOT, "[%.2f, %.2f]", WEST + line[p][0], SOUTH + line[p][1]));
      }
      text.append("]}}");
    }
    return text.append("\n]}\n").toString();
  }
}
