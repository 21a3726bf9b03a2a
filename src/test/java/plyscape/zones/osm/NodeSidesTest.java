package plyscape.zones.osm;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.HashMap;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;

class NodeSidesTest {

  @Test
  void codes_sayOnWhichSides() {
    NodeSides sides = new NodeSides(new Envelope(10, 20, 40, 50));
    assertEquals(0, sides.code(15, 45));
    assertEquals(0, sides.code(10, 50), "the edge is within");
    assertEquals(1, sides.code(9, 45));
    assertEquals(2 | 8, sides.code(21, 51));
    assertEquals(0, sides.code(375, 45), "a turn further on");
  }

  /** Against a plain table: rising, falling, negative and far-off ids, some more than once. */
  @Test
  void whatWasPut_isFound_inAnyOrder() {
    Random random = new Random(7);
    Map<Long, Integer> table = new HashMap<>();
    NodeSides sides = new NodeSides(new Envelope(0, 1, 0, 1));
    for (int i = 0; i < 2_000_000; i++) {
      long id = i % 3 == 0 ? i * 7L : i % 3 == 1 ? -i : random.nextLong() >> 6;
      int code = (int) (Math.abs(id) % 16);
      sides.put(id, code);
      if (i % 50 < 3) {
        table.put(id, code);
      }
    }
    sides.settle();
    table.forEach((id, code) -> assertEquals(code, sides.of(id), "id " + id));
    assertEquals(NodeSides.UNKNOWN, sides.of(5));
    assertEquals(NodeSides.UNKNOWN, sides.of(Long.MAX_VALUE));
  }
}
