package plyscape.toolpath;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The connected parts of what lies far enough inside a field, as {@link InnerPart}s. */
final class InnerParts {

  private final Lattice lattice;
  private final Patches patches;

  /** Position of the part that each patch is, by the run that stands for it; others have -1. */
  private final int[] positions;

  private final List<InnerPart> parts = new ArrayList<>();

  /**
   * @param field values at the nodes
   * @param least value of what belongs to a part
   * @param mask where to look
   */
  InnerParts(Lattice lattice, float[] field, double least, CoarseMap mask) {
    this.lattice = lattice;
    patches = Patches.inside(lattice, field, least, mask);
    positions = new int[patches.runs()];
    Arrays.fill(positions, -1);
    List<List<Integer>> runs = new ArrayList<>();
    for (int run = 0; run < patches.runs(); run++) {
      int patch = patches.patch(run);
      if (positions[patch] < 0) {
        positions[patch] = runs.size();
        runs.add(new ArrayList<>());
      }
      runs.get(positions[patch]).add(run);
    }
    runs.forEach(own -> parts.add(new InnerPart(lattice, patches, own)));
  }

  /** All, in the order of the lattice's rows. */
  List<InnerPart> all() {
    return List.copyOf(parts);
  }

  /** Position of the part that a ring lies in or around, or -1. */
  int of(Ring ring) {
    int[] ways = {0, 1, -1, lattice.columns(), -lattice.columns()};
    for (int i = 0; i < ring.size(); i++) {
      int node = lattice.nearest(ring.x()[i], ring.y()[i]);
      for (int way : ways) {
        int run = patches.runAt(Math.max(0, Math.min(lattice.size() - 1, node + way)));
        if (run >= 0) {
          return positions[patches.patch(run)];
        }
      }
    }
    return -1;
  }
}
