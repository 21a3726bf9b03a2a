package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class OutlineLayerTest {

  @Test
  void add_takesTheFirstPointsOnly_andItsOwnCopy() {
    OutlineLayer layer = new OutlineLayer();
    int[] x = {1, 2, 3, 99};
    layer.add(x, new int[] {4, 5, 6, 99}, 3, true);
    x[0] = 77;
    assertArrayEquals(new int[] {1, 2, 3}, layer.outlines().get(0).x());
    assertArrayEquals(new int[] {4, 5, 6}, layer.outlines().get(0).y());
    assertTrue(layer.outlines().get(0).onBox());
    assertEquals(3, layer.points());
  }

  @Test
  void add_onePoint_isNoLine() {
    OutlineLayer layer = new OutlineLayer();
    layer.add(new int[] {1}, new int[] {1}, 1, false);
    assertEquals(0, layer.outlines().size());
  }

  @Test
  void addAll_keepsTheOrder() {
    OutlineLayer a = new OutlineLayer();
    a.add(new int[] {0, 1}, new int[] {0, 0}, 2, false);
    OutlineLayer b = new OutlineLayer();
    b.add(new int[] {5, 6, 7}, new int[] {0, 0, 0}, 3, false);
    a.addAll(b);
    assertEquals(5, a.outlines().get(1).x()[0]);
    assertEquals(5, a.points());
  }
}
