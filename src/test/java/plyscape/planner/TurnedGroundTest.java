package plyscape.planner;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.plan.Landscape;
import plyscape.terrain.Terrain;

/** A job with turned ground is the same job on ground that was turned beforehand. */
class TurnedGroundTest {

  private static final double TURN = Math.toRadians(30);

  @TempDir Path folder;

  private String centre = ", centre: [500000, 5600000], ground_width: 600";

  /** Height of the untouched ground at metres from the centre: a bump to the north-east. */
  private static double heightM(double east, double north) {
    double x = (east - 120) / 150;
    double y = (north - 200) / 90;
    return 100 * Math.exp(-x * x - y * y) + 0.02 * east;
  }

  /** A grid of 1200 x 1200 m, the ground in it turned by some angle about the middle. */
  private void writeGround(String name, double angle) throws IOException {
    StringBuilder out =
        new StringBuilder(
            "ncols 240\nnrows 240\nxllcorner 499400\nyllcorner 5599400\ncellsize 5\n");
    for (int row = 239; row >= 0; row--) {
      for (int column = 0; column < 240; column++) {
        double u = (column + 0.5) * 5 - 600;
        double v = (row + 0.5) * 5 - 600;
        double east = u * Math.cos(angle) + v * Math.sin(angle);
        double north = -u * Math.sin(angle) + v * Math.cos(angle);
        out.append(String.format(Locale.ROOT, "%.4f ", heightM(east, north)));
      }
      out.append('\n');
    }
    Files.writeString(folder.resolve(name), out);
  }

  private void writeRoad(String name, double angle) throws IOException {
    double[][] road = {{-200, -150}, {50, 60}, {220, 40}};
    StringBuilder line = new StringBuilder();
    for (double[] p : road) {
      line.append(
          String.format(
              Locale.ROOT,
              "%s[%.6f, %.6f]",
              line.isEmpty() ? "" : ", ",
              500_000 + p[0] * Math.cos(angle) - p[1] * Math.sin(angle),
              5_600_000 + p[0] * Math.sin(angle) + p[1] * Math.cos(angle)));
    }
    Files.writeString(
        folder.resolve(name),
        """
        {"type": "FeatureCollection",
         "crs": {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::32632"}},
         "features": [{"type": "Feature", "properties": {},
           "geometry": {"type": "LineString", "coordinates": [%s]}}]}
        """
            .formatted(line));
  }

  private Landscape preview(String ground, String road, String panel) throws IOException {
    String layup =
        """
        name: four
        plies:
          - {name: one, colour: "#eeeeee", thickness: 0.9}
          - {name: two, colour: "#bb9977", thickness: 0.9}
          - {name: three, colour: "#223344", thickness: 0.9}
          - {name: base, colour: "#998877", thickness: 4}
        """;
    return new SmallJob(folder, layup)
        .preview(
            """
            layup: layup.yaml
            terrain: {file: %s, crs: "EPSG:32632", plies: [one, two, three]%s}
            panel: {width: 72, height: 62, border: 6%s}
            zones: [{name: road, file: %s, ply: base, width: 2}]
            tools: [{name: end mill 1.5, diameter: 1.5}]
            """
                .formatted(ground, centre, panel, road),
            new Warnings());
  }

  @Test
  void turnedJob_isTheJobOnTurnedGround() throws IOException {
    writeGround("north.asc", 0);
    writeRoad("north.geojson", 0);
    writeGround("turned.asc", TURN);
    writeRoad("turned.geojson", TURN);
    Landscape asked = preview("north.asc", "north.geojson", ", turn: 30");
    Landscape before = preview("turned.asc", "turned.geojson", "");
    assertEquals(before.terrain().zmaxM(), asked.terrain().zmaxM(), 0.1);
    assertEquals(before.terrain().zminM(), asked.terrain().zminM(), 0.1);
    Geometry road = asked.zones().get(0).area();
    Geometry turned = before.zones().get(0).area();
    assertTrue(road.symDifference(turned).getArea() < 1e-3, "zones turn without resampling");
    before
        .tiling()
        .exposed()
        .forEach(
            (ply, area) -> {
              double apart = area.symDifference(asked.tiling().exposed().get(ply)).getArea();
              assertTrue(apart < 0.01 * 3000, "ply " + ply + ": " + apart + " mm2 differ");
            });
  }

  @Test
  void groundTurnsCounterClockwiseOnThePanel() throws IOException {
    writeGround("north.asc", 0);
    writeRoad("north.geojson", 0);
    Landscape plan = preview("north.asc", "north.geojson", ", turn: 90");
    Terrain terrain = plan.terrain();
    assertEquals(90, terrain.frame().turn().degrees());
    // The bump lies 120 m east and 200 m north: after a quarter turn 200 m left and 120 m up.
    double mm = 1 / terrain.frame().metresPerMm();
    Coordinate top = new Coordinate(36 - 200 * mm, 31 + 120 * mm);
    Geometry highest = plan.tiling().exposed().get(1);
    assertTrue(highest.distance(highest.getFactory().createPoint(top)) < 0.5);
  }

  @Test
  void turnWithoutACentre_isABadJob() throws IOException {
    writeGround("north.asc", 0);
    writeRoad("north.geojson", 0);
    centre = "";
    assertThrows(InputFault.class, () -> preview("north.asc", "north.geojson", ", turn: 30"));
  }
}
