package plyscape.zones;

import org.locationtech.jts.geom.Coordinate;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.GroundFrame;
import plyscape.terrain.crs.FrameMaps;
import plyscape.terrain.crs.PlaneMap;
import plyscape.text.Template;
import plyscape.zones.map.MapFile;

/** Looks whether a map that says how far it goes covers the carved area. */
final class ExtentCheck {

  /** Places a side at which the map is asked for. */
  private static final int STEPS = 50;

  /** Less than this outside, as a share, isn't worth a word. */
  private static final double UNSAID = 0.005;

  private ExtentCheck() {}

  /** Adds a warning when the map ends within the carved area. */
  static void check(MapFile map, GroundFrame frame, Warnings warnings) {
    if (map.extent() == null || frame.crs().isEmpty()) {
      return;
    }
    PlaneMap back = FrameMaps.from(frame, map.crs(), Place.file(map.name()));
    Box ground = frame.ground();
    double[] xy = new double[2 * STEPS * STEPS];
    for (int i = 0; i < STEPS * STEPS; i++) {
      xy[2 * i] = ground.minX() + ground.width() * (i % STEPS + 0.5) / STEPS;
      xy[2 * i + 1] = ground.minY() + ground.height() * (i / STEPS + 0.5) / STEPS;
    }
    back.map(xy, STEPS * STEPS);
    int beyond = 0;
    for (int i = 0; i < xy.length; i += 2) {
      beyond += map.extent().contains(new Coordinate(xy[i], xy[i + 1])) ? 0 : 1;
    }
    double share = beyond / (double) (STEPS * STEPS);
    if (share > UNSAID) {
      warnings.add(
          "map-ends",
          Template.fill(
              "%s says that it ends within the carved area: %.0f %% of that lies beyond it, where"
                  + " features are missing or cut off; take a larger extract",
              map.name(), 100 * share),
          map.name());
    }
  }
}
