package plyscape.toolpath.cover;

import java.util.Arrays;
import java.util.function.IntPredicate;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.lattice.Sweep;
import plyscape.toolpath.ring.Chunks;

/**
 * A ring in chunks, with the lattice nodes that a disk newly covers along each. What is chosen
 * doesn't change it, so that it can be found for many rings at once.
 */
final class ChunkCover {

  final Ring ring;
  final Chunks chunks;

  /** First and last node of each run, chunk after chunk. */
  private int[] runs = new int[256];

  /** Where the runs of each chunk begin; one more at the end. */
  private final int[] starts;

  /**
   * @param reachMm radius of the disk
   * @param wanted which chunks are asked for; the others have no runs
   */
  ChunkCover(Ring ring, Chunks chunks, Lattice lattice, double reachMm, IntPredicate wanted) {
    this.ring = ring;
    this.chunks = chunks;
    starts = new int[chunks.count() + 1];
    Sweep sweep = new Sweep(lattice);
    int filled = 0;
    for (int c = 0; c < chunks.count(); c++) {
      int end = wanted.test(c) ? chunks.start(c + 1) : chunks.start(c);
      for (int i = chunks.start(c); i < end; i++) {
        int found =
            sweep.fresh(chunks.x(i), chunks.y(i), chunks.x(i + 1), chunks.y(i + 1), reachMm);
        if (runs.length < filled + found) {
          runs = Arrays.copyOf(runs, 2 * (filled + found));
        }
        System.arraycopy(sweep.runs, 0, runs, filled, found);
        filled += found;
      }
      starts[c + 1] = filled;
    }
  }

  /** How many nodes of a run are of a kind. */
  interface Count {
    int of(int first, int last);
  }

  /** How many of the nodes newly covered along a chunk are of a kind. */
  int count(int chunk, Count kind) {
    int sum = 0;
    for (int r = starts[chunk]; r < starts[chunk + 1]; r += 2) {
      sum += kind.of(runs[r], runs[r + 1]);
    }
    return sum;
  }

  /** Hands over the nodes newly covered along a chunk, as runs of neighbours in a row. */
  void each(int chunk, Sweep.Run run) {
    for (int r = starts[chunk]; r < starts[chunk + 1]; r += 2) {
      run.nodes(runs[r], runs[r + 1]);
    }
  }
}
