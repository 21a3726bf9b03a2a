package plyscape.planner;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Random;
import plyscape.terrain.AscText;

/**
 * A small job from a seed with any cutters and feeds that a reader accepts: pyramids, terraces,
 * checkerboards and islands, slots about as wide as a cutter, stepdowns up to half a panel, steep
 * ramps, slow plunges, weak and strong machines.
 */
final class OddJob extends RandomJob {

  private static final double SIDE_MM = 20;

  OddJob(long seed) {
    super(seed, new Random(seed * 104729 + 7));
  }

  @Override
  Map<String, String> files() {
    Map<String, String> files = new LinkedHashMap<>();
    int plies = 3 + random.nextInt(4);
    files.put("layup.yaml", layup(plies, 30));
    files.put("terrain.asc", terrain());
    double smallest = between(0.8, 2.5);
    files.put("map.geojson", map(between(0.9, 1.3) * smallest));
    files.put("job.yaml", job(plies, smallest));
    return files;
  }

  private String terrain() {
    int kind = random.nextInt(4);
    double period = between(3, 12);
    return AscText.of(
        40,
        40,
        (x, y) ->
            switch (kind) {
              case 0 -> 300 - 10 * Math.max(Math.abs(x - 20), Math.abs(y - 20)); // pyramid
              case 1 -> 40 * Math.floor((x + 0.6 * y) / period); // terraces
              case 2 -> 100 * ((int) (x / period) + (int) (y / period) & 1); // checkerboard
              default -> // islands
                  100 * Math.max(0, Math.sin(x * 2 / period) * Math.sin(y * 2 / period) - 0.4);
            });
  }

  /** Slots of a width, mm, as lines on the ground of 40 x 40 m. */
  private String map(double widthMm) {
    StringBuilder features = new StringBuilder();
    for (int i = 0; i < 3; i++) {
      features.append(
          text(
              """
              %s{"type": "Feature", "properties": {"width": %.3f}, "geometry": {"type": "LineString",
              "coordinates": [[%.2f, %.2f], [%.2f, %.2f], [%.2f, %.2f]]}}\
              """,
              i == 0 ? "" : ",",
              widthMm,
              between(2, 38),
              between(2, 38),
              between(2, 38),
              between(2, 38),
              between(2, 38),
              between(2, 38)));
    }
    slotMm = widthMm;
    return "{\"type\": \"FeatureCollection\", \"crs\": {\"type\": \"name\", \"properties\":"
        + " {\"name\": \"EPSG:32632\"}}, \"features\": ["
        + features
        + "]}";
  }

  private double slotMm;

  private String job(int plies, double smallest) {
    StringBuilder tools = new StringBuilder(tool(smallest));
    for (int more = random.nextInt(3); more > 0; more--) {
      tools.append(tool(between(smallest * 1.05, 8)));
    }
    return text(
        """
        layup: layup.yaml
        terrain: {file: terrain.asc, smoothing: %.1f, crs: "EPSG:32632"}
        panel: {width: %5$.1f, height: %5$.1f, border: 0}
        zones: [{name: slots, file: map.geojson, ply: ply %2$d, width: %3$.3f}]
        machine: {travel: [50, 50, 60], rapid: %6$.0f, acceleration: %7$.0f, cornering: %8$.3f, ramp: %9$.1f}
        tools:
        %4$s\
        """,
        random.nextInt(2) * 0.4,
        plies - 1,
        slotMm,
        tools,
        SIDE_MM,
        between(1000, 6000),
        between(50, 1500),
        between(0, 0.1),
        between(1, 45));
  }

  private String tool(double diameter) {
    return text(
        "  - {name: end mill %.3f, diameter: %.3f, flute_length: 20, stepdown: %.3f, stepover:"
            + " %.2f, feed: %.0f, plunge: %.0f}\n",
        diameter,
        diameter,
        between(0.3, 4),
        between(0.2, 0.6),
        between(300, 3000),
        between(80, 300));
  }
}
