package plyscape.toolpath.cover;

import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.Sweep;
import plyscape.toolpath.ring.LevelField;
import plyscape.toolpath.ring.Piece;

/**
 * Parts of levels so thin that no lattice node shows them, with deeper ground beside them: a ledge
 * or a ridge of less than a lattice step. The nodes around go deeper, so that none of them would
 * ask for the level; here are those that ask for it beside their own depth. What is cut of them is
 * taken out.
 */
public final class ThinParts {

  private final Lattice lattice;
  private final double[] depths;

  /** Nodes that ask for each level; null where it has no such parts. */
  private final BitSet[] nodes;

  private ThinParts(Lattice lattice, double[] depths, BitSet[] nodes) {
    this.lattice = lattice;
    this.depths = depths;
    this.nodes = nodes;
  }

  /** The thin parts of levels, upper first. */
  public static ThinParts of(List<LevelField> fields, Lattice lattice) {
    double[] depths = fields.stream().mapToDouble(field -> field.level().depthMm()).toArray();
    BitSet[] nodes =
        IntStream.range(0, depths.length - 1)
            .parallel()
            .mapToObj(k -> new ThinSearch(fields, k).nodes())
            .toArray(BitSet[]::new);
    return new ThinParts(lattice, depths, nodes);
  }

  /** The same parts once more, for another choice of cutters. */
  public ThinParts copy() {
    BitSet[] copies = new BitSet[nodes.length];
    for (int k = 0; k < nodes.length; k++) {
      copies[k] = nodes[k] == null ? null : (BitSet) nodes[k].clone();
    }
    return new ThinParts(lattice, depths, copies);
  }

  /** Whether a node asks for a level. */
  boolean at(int node, int k) {
    BitSet here = of(k);
    return here != null && here.get(node);
  }

  /** The nodes that ask for a level, rising. */
  IntStream nodes(int k) {
    BitSet here = of(k);
    return here == null ? IntStream.empty() : here.stream();
  }

  private BitSet of(int k) {
    return k < nodes.length ? nodes[k] : null;
  }

  /** A cutter goes along pieces, in the pocket of the level of this depth if there is one. */
  void cut(List<Piece> pieces, double radiusMm, double depthMm) {
    for (int k = 0; k < nodes.length; k++) {
      BitSet here = nodes[k];
      if (here != null && Math.abs(depths[k] - depthMm) < 1e-9) {
        Sweep sweep = new Sweep(lattice);
        Sweep.Run run = (first, last) -> here.clear(first, last + 1);
        pieces.forEach(piece -> cut(piece, sweep, radiusMm, run));
        nodes[k] = here.isEmpty() ? null : here;
      }
    }
  }

  private static void cut(Piece piece, Sweep sweep, double radiusMm, Sweep.Run run) {
    int n = piece.size();
    double[] x = piece.x();
    double[] y = piece.y();
    sweep.all(x[0], y[0], x[0], y[0], radiusMm, run);
    for (int i = 1; i < n + (piece.closed() ? 1 : 0); i++) {
      sweep.fresh(x[i - 1], y[i - 1], x[i % n], y[i % n], radiusMm, run);
    }
  }
}
