package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.HashMap;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

class LongIdsTest {

  @Test
  void numbersGoByFirstSight() {
    LongIds ids = new LongIds(4);
    assertEquals(0, ids.id(70));
    assertEquals(1, ids.id(-5));
    assertEquals(0, ids.id(70));
    assertEquals(2, ids.id(0));
    assertEquals(3, ids.size());
    assertEquals(-5, ids.low(1));
  }

  @Test
  void idOrNone_unknownKey_isNoneAndStaysUnknown() {
    LongIds ids = new LongIds(4);
    assertEquals(-1, ids.idOrNone(8));
    assertEquals(-1, ids.idOrNone(8));
    assertEquals(0, ids.id(8));
    assertEquals(0, ids.idOrNone(8));
  }

  @Test
  void pair_negativeHalves_comeBack() {
    LongIds ids = new LongIds(4);
    int[][] pairs = {{-3, -4}, {3, -4}, {-3, 4}, {Integer.MIN_VALUE, Integer.MAX_VALUE}};
    for (int[] pair : pairs) {
      int id = ids.id(LongIds.pair(pair[0], pair[1]));
      assertEquals(pair[0], ids.high(id));
      assertEquals(pair[1], ids.low(id));
    }
    assertEquals(pairs.length, ids.size());
  }

  /** Against the library's map, through many enlargements and keys that collide. */
  @Test
  void manyKeys_areWhatAHashMapSays() {
    Random random = new Random(3);
    LongIds ids = new LongIds(1);
    Map<Long, Integer> known = new HashMap<>();
    for (int i = 0; i < 30_000; i++) {
      long key = LongIds.pair(random.nextInt(200) << 16, random.nextInt(200) - 100);
      int wanted = known.computeIfAbsent(key, k -> known.size());
      assertEquals(wanted, ids.id(key));
    }
    assertEquals(known.size(), ids.size());
    known.forEach((key, id) -> assertEquals(id, ids.idOrNone(key)));
  }
}
