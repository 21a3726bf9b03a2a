package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class NodedEdgesTest {

  private static final int[] X = {0, 9};
  private static final int[] Y = {0, 0};
  private static final int[] BACK = {9, 0};

  private static int[] weights(NodedEdges edges) {
    int[] out = new int[2];
    edges.addTo(0, 1, out, 0);
    return out;
  }

  @Test
  void linesOnEachOther_areOneEdge_weightsAddUp() {
    Linework lines = new Linework(2);
    lines.add(X, Y, 0, 2, false);
    lines.add(X, Y, 0, 3, false);
    lines.add(X, Y, 1, -1, false);
    NodedEdges edges = NodedEdges.of(lines);
    assertEquals(1, edges.count());
    assertArrayEquals(new int[] {5, -1}, weights(edges));
    assertFalse(edges.cancels(0));
  }

  @Test
  void thereAndBack_cancels() {
    Linework lines = new Linework(2);
    lines.add(X, Y, 0, 1, false);
    lines.add(BACK, Y, 0, 1, false);
    NodedEdges edges = NodedEdges.of(lines);
    assertEquals(1, edges.count());
    assertTrue(edges.cancels(0));
  }

  @Test
  void thereAndBack_inAnotherComponent_doesNotCancel() {
    Linework lines = new Linework(2);
    lines.add(X, Y, 0, 1, false);
    lines.add(BACK, Y, 1, 1, false);
    NodedEdges edges = NodedEdges.of(lines);
    assertFalse(edges.cancels(0));
    assertArrayEquals(new int[] {1, -1}, weights(edges));
  }

  @Test
  void terrainAndDrawnLineTogether_countAsTerrain() {
    Linework lines = new Linework(2);
    lines.add(X, Y, 0, 1, false);
    lines.add(BACK, Y, 1, 1, true);
    assertTrue(NodedEdges.of(lines).terrain(0));
  }

  @Test
  void pointsThatRepeat_areNoEdges() {
    Linework lines = new Linework(2);
    lines.add(new int[] {0, 0, 4, 4}, new int[] {1, 1, 1, 1}, 0, 1, false);
    NodedEdges edges = NodedEdges.of(lines);
    assertEquals(1, edges.count());
    assertEquals(2, edges.vertexCount());
    assertEquals(4, edges.x(edges.from(0)) + edges.x(edges.to(0)));
    assertEquals(1, edges.y(0));
  }

  @Test
  void manyEdges_keepTheirWeights() {
    Linework lines = new Linework(1);
    for (int i = 0; i < 500; i++) {
      lines.add(new int[] {0, 7}, new int[] {3 * i, 3 * i}, 0, i + 1, false);
    }
    NodedEdges edges = NodedEdges.of(lines);
    assertEquals(500, edges.count());
    for (int e = 0; e < 500; e++) {
      int[] sum = new int[1];
      edges.addTo(e, edges.from(e) < edges.to(e) ? 1 : -1, sum, 0);
      assertEquals(e + 1, Math.abs(sum[0]));
    }
  }
}
