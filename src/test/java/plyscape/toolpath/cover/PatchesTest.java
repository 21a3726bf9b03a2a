package plyscape.toolpath.cover;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayDeque;
import java.util.Random;
import org.junit.jupiter.api.Test;
import plyscape.toolpath.lattice.CoarseMap;
import plyscape.toolpath.lattice.Lattice;

/** Against a flood from every node. */
class PatchesTest {

  private static final byte WANTED = 2;

  @Test
  void randomNodes_asByFlooding() {
    for (int seed = 0; seed < 40; seed++) {
      Random random = new Random(seed);
      int columns = 3 + random.nextInt(30);
      int rows = 3 + random.nextInt(30);
      Lattice lattice = new Lattice(0, 0, 1, columns, rows);
      byte[] state = new byte[columns * rows];
      double share = random.nextDouble();
      for (int j = 1; j < rows - 1; j++) {
        for (int i = 1; i < columns - 1; i++) {
          state[j * columns + i] = random.nextDouble() < share ? WANTED : 0;
        }
      }
      Patches patches =
          new Patches(lattice, node -> state[node] == WANTED, CoarseMap.everywhere(lattice));
      int nodes = 0;
      for (int run = 0; run < patches.runs(); run++) {
        for (int node = patches.first(run); node < patches.end(run); node++) {
          assertEquals(flooded(state, columns, node), patches.nodes(run), "seed " + seed);
          nodes++;
        }
      }
      int wanted = 0;
      for (byte s : state) {
        wanted += s == WANTED ? 1 : 0;
      }
      assertEquals(wanted, nodes, "seed " + seed);
    }
  }

  private static int flooded(byte[] state, int columns, int start) {
    boolean[] seen = new boolean[state.length];
    ArrayDeque<Integer> queue = new ArrayDeque<>();
    queue.add(start);
    seen[start] = true;
    int count = 0;
    while (!queue.isEmpty()) {
      int node = queue.poll();
      count++;
      for (int d = -columns; d <= columns; d += columns) {
        for (int next = node + d - 1; next <= node + d + 1; next++) {
          if (!seen[next] && state[next] == WANTED) {
            seen[next] = true;
            queue.add(next);
          }
        }
      }
    }
    return count;
  }
}
