package plyscape.zones;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.GroundFrame;
import plyscape.job.GroundCover;
import plyscape.job.MapPick;

class OutsideZoneTest {

  /** 1 km on 100 mm. */
  private static final GroundFrame FRAME =
      new GroundFrame("", new Box(0, 0, 1000, 1000), new Box(5, 5, 105, 105), 1);

  @TempDir Path dir;

  private Zone outside(String polygon) throws IOException {
    Path file = dir.resolve("park.geojson");
    Files.writeString(
        file,
        "{\"type\":\"Feature\",\"properties\":{},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":"
            + polygon
            + "}}");
    return OutsideZone.of(
        new GroundCover.Outline(new MapPick(file, "", new TreeMap<>()), 3), FRAME, new Warnings());
  }

  @Test
  void everythingButThePolygon_isOutside() throws IOException {
    // 600 x 500 m with a hole of 100 x 100 m, sticking out of the terrain by 100 m in the west: 500
    // x 500 - 100 x 100 stay.
    Zone zone =
        outside(
            "[[[-100,200],[500,200],[500,700],[-100,700],[-100,200]],[[100,300],[200,300],[200,400],[100,400],[100,300]]]");
    assertEquals(10000 - 2500 + 100, zone.area().getArea(), 1e-6);
    assertEquals(3, zone.spec().plyNumber());
    assertEquals(1, zone.features());
  }

  /** Cells of 10 mm, by their centres: 5 x 5 of them less the one in the hole. */
  @Test
  void cellsInside_areThoseWhoseCentresAre() throws IOException {
    Zone zone =
        outside(
            "[[[0,200],[500,200],[500,700],[0,700],[0,200]],[[100,300],[200,300],[200,400],[100,400],[100,300]]]");
    boolean[] inside = OutsideZone.inside(zone, new CellFrame(5, 5, 10, 10, 10, 10));
    int count = 0;
    for (boolean one : inside) {
      count += one ? 1 : 0;
    }
    assertEquals(24, count);
    assertTrue(inside[2 * 10]);
    assertFalse(inside[3 * 10 + 1]);
  }

  @Test
  void outlineBesideTheTerrain_isAFault() {
    assertThrows(JobFault.class, () -> outside("[[[2000,0],[3000,0],[3000,900],[2000,0]]]"));
  }
}
