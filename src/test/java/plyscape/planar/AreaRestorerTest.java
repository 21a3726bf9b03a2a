package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class AreaRestorerTest {

  private static final boolean[] EVERY_OTHER = {false, true, false, true, false};

  /** A roof over (0, 0) to (400, 0): its kinks at 100 and 300 are left out. */
  private static OutlineLayer roof(boolean onBox) {
    OutlineLayer layer = new OutlineLayer();
    layer.add(new int[] {0, 100, 200, 300, 400}, new int[] {0, 60, 100, 60, 0}, 5, onBox);
    return layer;
  }

  private static OutlineLayer restored(OutlineLayer layer, boolean... gone) {
    int n = layer.points();
    int[] x = new int[n];
    int[] y = new int[n];
    int[] firstOf = new int[layer.outlines().size() + 1];
    int at = 0;
    for (int k = 0; k < layer.outlines().size(); k++) {
      OutlineLayer.Outline outline = layer.outlines().get(k);
      System.arraycopy(outline.x(), 0, x, at, outline.x().length);
      System.arraycopy(outline.y(), 0, y, at, outline.x().length);
      at += outline.x().length;
      firstOf[k + 1] = at;
    }
    return new AreaRestorer(x, y, firstOf, gone, layer).restored();
  }

  /** Each half lost 1000 square units of 100 x 60 x 1/2 ...: the top rises by area over length. */
  @Test
  void kinksLeftOut_topRisesByWhatWasCutOff_endsStay() {
    OutlineLayer.Outline out = restored(roof(false), EVERY_OTHER).outlines().get(0);
    // Triangles (0,0) (100,60) (200,100): twice the area is |100*100 - 60*200| = 2000, each side.
    double rise = 2000.0 / (2 * Math.hypot(200, 100));
    assertArrayEquals(new int[] {0, 200, 400}, out.x());
    assertArrayEquals(new int[] {0, 100 + (int) Math.rint(rise), 0}, out.y());
  }

  @Test
  void alongTheBox_nothingMoves() {
    OutlineLayer.Outline out = restored(roof(true), EVERY_OTHER).outlines().get(0);
    assertArrayEquals(new int[] {0, 100, 0}, out.y());
  }

  @Test
  void nothingLeftOut_nothingMoves() {
    OutlineLayer.Outline out = restored(roof(false), new boolean[5]).outlines().get(0);
    assertArrayEquals(roof(false).outlines().get(0).y(), out.y());
  }

  @Test
  void otherVertexInTheWay_keepsItsPlace() {
    OutlineLayer layer = roof(false);
    layer.add(new int[] {200, 200}, new int[] {102, 900}, 2, false);
    OutlineLayer out = restored(layer, false, true, false, true, false, false, false);
    assertArrayEquals(new int[] {0, 100, 0}, out.outlines().get(0).y());
    assertEquals(102, out.outlines().get(1).y()[0]);
  }

  @Test
  void noLines_areNone() {
    assertEquals(0, restored(new OutlineLayer()).outlines().size());
  }
}
