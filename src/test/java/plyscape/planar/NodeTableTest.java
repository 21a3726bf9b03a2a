package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class NodeTableTest {

  private static Chain chain(int... xy) {
    int[] x = new int[xy.length / 2];
    int[] y = new int[xy.length / 2];
    for (int i = 0; i < x.length; i++) {
      x[i] = xy[2 * i];
      y[i] = xy[2 * i + 1];
    }
    return new Chain(x, y, false, -1, -1);
  }

  /** Spokes in any order of input: clockwise goes round all of them by falling angle. */
  @Test
  void star_clockwiseGoesRoundByAngle() {
    int[][] spokes = {{3, 0}, {5, 1}, {2, 2}, {0, 7}, {-1, 4}, {-3, 0}, {-2, -2}, {0, -1}, {4, -3}};
    for (long seed = 0; seed < 10; seed++) {
      List<Integer> order = new ArrayList<>();
      for (int i = 0; i < spokes.length; i++) {
        order.add(i);
      }
      Collections.shuffle(order, new Random(seed));
      List<Chain> chains = new ArrayList<>();
      order.forEach(i -> chains.add(chain(10, 10, 10 + spokes[i][0], 10 + spokes[i][1])));
      NodeTable nodes = new NodeTable(chains);
      assertEquals(1 + spokes.length, nodes.count());
      for (int c = 0; c < spokes.length; c++) {
        int next = nodes.clockwise(2 * c) >> 1;
        int wanted = (order.get(c) + spokes.length - 1) % spokes.length;
        assertEquals(wanted, order.get(next), "seed " + seed);
      }
    }
  }

  @Test
  void directionsThatDifferByAHair_areToldApart() {
    int far = 1 << 20;
    NodeTable nodes =
        new NodeTable(
            List.of(chain(0, 0, far, far - 1), chain(0, 0, far + 1, far), chain(0, 0, -1, 0)));
    assertEquals(0, nodes.clockwise(2), "the steeper one's next clockwise is the flatter");
    assertEquals(4, nodes.clockwise(0));
  }

  @Test
  void halfEdgesOfAChain_leaveItsTwoEnds() {
    NodeTable nodes = new NodeTable(List.of(chain(0, 0, 5, 5, 9, 0), chain(9, 0, 20, 0)));
    assertNotEquals(nodes.start(0), nodes.start(1));
    assertEquals(nodes.start(1), nodes.start(2));
    assertEquals(2, nodes.clockwise(1), "two at a node take turns");
    assertEquals(1, nodes.clockwise(2));
    assertEquals(0, nodes.clockwise(0), "one alone comes back to itself");
  }

  @Test
  void closedChain_leavesItsNodeTwice_byFirstAndLastPiece() {
    NodeTable nodes = new NodeTable(List.of(chain(0, 0, 4, 0, 0, 4, 0, 0)));
    assertEquals(1, nodes.count());
    assertEquals(1, nodes.clockwise(0));
    assertEquals(0, nodes.clockwise(1));
  }
}
