package plyscape.cli.job;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import plyscape.bench.BigTiff;
import plyscape.bench.Relief;

/**
 * Jobs of made ground for {@link JobGrowth}: woods and rivers as zones, two cutters. The rasters
 * are written once and kept.
 */
final class GrowthJob {

  /** Cells along a side of the largest raster, and metres along a side of the ground. */
  private static final int MOST = 8000;

  private static final double BORDER_MM = 6;
  private static final double FIXED_PANEL_MM = 240;

  /** Panel mm a cell where the panel grows: 8000 cells are 480 mm. */
  private static final double CELL_MM = 0.06;

  /** Side of a wall's panels, of which ten are as wide as the largest raster. */
  private static final int WALL_PANEL_MM = 48;

  private static final double WOOD_EVERY_MM = 24;
  private static final double WOOD_RADIUS_MM = 5;
  private static final double RIVER_EVERY_MM = 60;

  private final Path folder;

  /** Takes the folder for rasters, maps and jobs. */
  GrowthJob(Path folder) {
    this.folder = folder;
  }

  /** The same ground on the same panel, in {@code side} x {@code side} cells. */
  Path finer(int side) throws IOException {
    String name = "finer-" + side;
    Path raster = folder.resolve(name + ".tif");
    if (!Files.exists(raster)) {
      double[] z = Relief.downs(side, side, 1);
      BigTiff.write(raster, side, (double) MOST / side, (c, r) -> z[r * side + c]);
    }
    return job(name, raster, MOST, FIXED_PANEL_MM, "scale");
  }

  /** A window of {@code side} x {@code side} cells on a panel as large as they are many. */
  Path wider(int side) throws IOException {
    Path raster = folder.resolve("wider.tif");
    if (!Files.exists(raster)) {
      double[] z = Relief.rolling(MOST, MOST, 1);
      BigTiff.write(raster, MOST, 1, (c, r) -> z[r * MOST + c]);
    }
    return job(
        "wider-" + side, raster, side, side * CELL_MM + 2 * BORDER_MM, "[250, 80, -80, -250]");
  }

  /** The same ground over {@code across} x {@code across} panels of one size. */
  Path wall(int across) throws IOException {
    wider(1000); // the raster
    double mm = across * WALL_PANEL_MM;
    int groundM = (int) Math.round((mm - 2 * BORDER_MM) / CELL_MM);
    Path whole =
        job("wall-" + across, folder.resolve("wider.tif"), groundM, mm, "[250, 80, -80, -250]");
    String panel = "panel: {width: " + WALL_PANEL_MM + ", height: " + WALL_PANEL_MM;
    String tiles = ", tiles: [" + across + ", " + across + "]";
    return Files.writeString(
        whole,
        Files.readString(whole)
            .replaceAll("panel: \\{width: [0-9.]+, height: [0-9.]+", panel + tiles));
  }

  private Path job(String name, Path raster, int groundM, double panelMm, String bands)
      throws IOException {
    double metresPerMm = groundM / (panelMm - 2 * BORDER_MM);
    Files.writeString(folder.resolve(name + ".geojson"), map(groundM, metresPerMm));
    return Files.writeString(
        folder.resolve(name + ".yaml"),
        String.format(
            Locale.ROOT,
            """
            layup: %s
            terrain:
              file: %s
              crop: [%d, %d, %d, %d]
              plies: [limestone, heather, meadow, barley, brick]
              bands: %s
              smoothing: 0.4
            panel: {width: %.2f, height: %.2f, border: %.0f}
            zones:
              - {name: woods, file: %s.geojson, where: {kind: wood}, sink: 1}
              - {name: rivers, file: %s.geojson, where: {kind: river}, ply: deep blue, width: 2.5}
            tools:
              - {name: end mill 3, shape: flat, diameter: 3.0, flute_length: 12, flutes: 2, rpm: 16000, feed: 1800, plunge: 500, stepdown: 2.0, stepover: 0.45}
              - {name: end mill 1.5, shape: flat, diameter: 1.5, flute_length: 8, flutes: 2, rpm: 18000, feed: 1200, plunge: 300, stepdown: 1.0, stepover: 0.45}
            machine: {travel: [600, 600, 80]}
            """,
            Path.of("samples/tarn-hollow/layup.yaml").toAbsolutePath(),
            raster.getFileName(),
            BigTiff.MIN_X,
            BigTiff.MAX_Y - groundM,
            BigTiff.MIN_X + groundM,
            BigTiff.MAX_Y,
            bands,
            panelMm,
            panelMm,
            BORDER_MM,
            name,
            name));
  }

  /** Woods on a lattice, a little out of place, and winding rivers from west to east. */
  private static String map(int groundM, double metresPerMm) {
    Random random = new Random(1);
    StringBuilder features = new StringBuilder();
    double step = WOOD_EVERY_MM * metresPerMm;
    for (double y = step / 2; y < groundM; y += step) {
      for (double x = step / 2; x < groundM; x += step) {
        feature(features, "wood", "Polygon", "[" + ring(x, y, metresPerMm, random) + "]");
      }
    }
    double apart = RIVER_EVERY_MM * metresPerMm;
    for (double y = apart / 2; y < groundM; y += apart) {
      feature(features, "river", "LineString", river(y, groundM, metresPerMm));
    }
    return """
    {"type": "FeatureCollection",
     "crs": {"type": "name", "properties": {"name": "EPSG:32632"}}, "features": [
    %s]}
    """
        .formatted(features);
  }

  private static void feature(StringBuilder out, String kind, String type, String coordinates) {
    out.append(out.isEmpty() ? "" : ",\n");
    out.append(
        """
        {"type": "Feature", "properties": {"kind": "%s"}, "geometry": {"type": "%s", "coordinates": %s}}\
        """
            .formatted(kind, type, coordinates));
  }

  private static String ring(double x, double y, double metresPerMm, Random random) {
    int points = 60;
    double cx = x + (random.nextDouble() - 0.5) * WOOD_RADIUS_MM * metresPerMm;
    double cy = y + (random.nextDouble() - 0.5) * WOOD_RADIUS_MM * metresPerMm;
    double[][] xy = new double[points + 1][];
    for (int i = 0; i < points; i++) {
      double angle = 2 * Math.PI * i / points;
      double radius = WOOD_RADIUS_MM * metresPerMm * (1 + 0.3 * Math.sin(3 * angle));
      xy[i] = new double[] {cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)};
    }
    xy[points] = xy[0];
    return line(xy);
  }

  private static String river(double y, int groundM, double metresPerMm) {
    int points = (int) (groundM / metresPerMm); // one a panel mm
    double[][] xy = new double[points + 1][];
    for (int i = 0; i <= points; i++) {
      double x = (double) groundM * i / points;
      xy[i] = new double[] {x, y + 6 * metresPerMm * Math.sin(x / metresPerMm / 7)};
    }
    return line(xy);
  }

  private static String line(double[][] xy) {
    StringBuilder out = new StringBuilder("[");
    for (double[] p : xy) {
      out.append(out.length() > 1 ? "," : "")
          .append(
              String.format(
                  Locale.ROOT, "[%.2f,%.2f]", BigTiff.MIN_X + p[0], BigTiff.MAX_Y - p[1]));
    }
    return out.append(']').toString();
  }
}
