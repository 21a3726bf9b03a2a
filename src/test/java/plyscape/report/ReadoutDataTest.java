package plyscape.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Base64;
import org.junit.jupiter.api.Test;
import plyscape.grid.Grid;
import plyscape.plan.Landscape;
import plyscape.render.CellMap;
import plyscape.render.HandPlan;

/** What the readout needs to say why a place shows its ply. */
class ReadoutDataTest {

  /** Ground from 100 m in the west to 200 m in the east; breaks at 160 and 120 m. */
  private static final Landscape PLAN = HandPlan.landscape();

  @Test
  void drawnPlies_areThoseOfGroundAndZones_whereAnotherShows() {
    CellMap map = CellMap.of(PLAN, 200);
    short[] drawn = DrawnPlies.of(PLAN, map);
    // 105 m gives ply 3, but ply 1 shows; 168 m gives ply 1, which shows; the zone gives ply 4.
    assertEquals(3, at(drawn, map, 10, 40));
    assertEquals(0, at(drawn, map, 66, 40));
    assertEquals(0, at(drawn, map, 80, 40));
    assertEquals(0, at(drawn, map, 2, 40), "nothing is drawn in the border");
  }

  @Test
  void elevations_areWithinAStepOfTheGround() {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    Elevations.put(node, PLAN);
    int columns = node.get("columns").asInt();
    int rows = node.get("rows").asInt();
    assertEquals(160, columns);
    assertEquals(124, rows, 1);
    byte[] bytes = Base64.getDecoder().decode(node.get("steps").asText());
    Grid ground = PLAN.terrain().elevationM();
    double step = node.get("step").asDouble();
    long steps = 0;
    int at = 0;
    for (int i = 0; i < columns * rows; i++) {
      long value = 0;
      int shift = 0;
      do {
        value |= (long) (bytes[at] & 127) << shift;
        shift += 7;
      } while (bytes[at++] < 0);
      steps += value % 2 == 1 ? -(value + 1) / 2 : value / 2;
      double x = 5 + (i % columns + 0.5) * 90 / columns;
      double y = 75 - (i / columns + 0.5) * 70 / rows;
      assertEquals(ground.bilinear(x, y), node.get("least").asDouble() + steps * step, step);
    }
    assertEquals(bytes.length, at);
  }

  private static int at(short[] drawn, CellMap map, double x, double y) {
    return drawn[(int) ((80 - y) / map.cellMm()) * map.columns() + (int) (x / map.cellMm())];
  }
}
