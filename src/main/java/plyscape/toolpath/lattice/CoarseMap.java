package plyscape.toolpath.lattice;

import java.util.List;

/**
 * Which blocks of the lattice have nodes of a kind in them or in a neighbouring block: a quick way
 * to pass over the rest.
 */
public final class CoarseMap {

  private final Lattice lattice;
  private final int block;
  private final int across;
  private final int up;
  private final boolean[] near;

  /** Whether any of some neighbours in a row, both ends included, is of the kind sought. */
  public interface Kind {
    boolean any(int first, int last);
  }

  /**
   * @param kind of node that is sought
   * @param radiusMm how near counts; blocks are a fifth larger
   * @param where blocks outside which no node is of the kind
   */
  public CoarseMap(Lattice lattice, Kind kind, double radiusMm, CoarseMap where) {
    this.lattice = lattice;
    block = Math.max(4, (int) Math.ceil(radiusMm * 1.2 / lattice.stepMm()));
    across = (lattice.columns() + block - 1) / block;
    up = (lattice.rows() + block - 1) / block;
    boolean[] has = new boolean[across * up];
    where.eachRun(
        (first, last) -> {
          int row = first / lattice.columns();
          int base = row * lattice.columns();
          int blocks = row / block * across;
          for (int node = first; node <= last; node++) {
            int a = (node - base) / block;
            int end = Math.min(last, base + (a + 1) * block - 1);
            if (!has[blocks + a]) {
              has[blocks + a] = kind.any(node, end);
            }
            node = end;
          }
        });
    near = new boolean[has.length];
    for (int b = 0; b < up; b++) {
      for (int a = 0; a < across; a++) {
        near[b * across + a] = any(has, a, b);
      }
    }
  }

  /** All blocks. */
  public static CoarseMap everywhere(Lattice lattice) {
    int side = Math.max(lattice.columns(), lattice.rows());
    return new CoarseMap(lattice, side, new boolean[] {true});
  }

  /** Blocks of so many nodes a side, row by row. */
  public CoarseMap(Lattice lattice, int block, boolean[] near) {
    this.lattice = lattice;
    this.block = block;
    this.near = near;
    across = (lattice.columns() + block - 1) / block;
    up = (lattice.rows() + block - 1) / block;
  }

  private boolean any(boolean[] has, int a, int b) {
    for (int d = Math.max(0, b - 1); d <= Math.min(up - 1, b + 1); d++) {
      for (int c = Math.max(0, a - 1); c <= Math.min(across - 1, a + 1); c++) {
        if (has[d * across + c]) {
          return true;
        }
      }
    }
    return false;
  }

  /** Whether anything may be within the radius of a point. */
  public boolean near(double x, double y) {
    int i = (int) Math.round((x - lattice.minX()) / lattice.stepMm()) / block;
    int j = (int) Math.round((y - lattice.minY()) / lattice.stepMm()) / block;
    return near[Math.max(0, Math.min(up - 1, j)) * across + Math.max(0, Math.min(across - 1, i))];
  }

  /**
   * Whether anything may be within the radius of one of a ring's points; points farther apart than
   * a block count as near.
   */
  boolean nearAny(Ring ring) {
    for (int i = 0; i < ring.size(); i++) {
      if (near(ring.x()[i], ring.y()[i])) {
        return true;
      }
      int j = i + 1 < ring.size() ? i + 1 : 0;
      if (Math.abs(ring.x()[i] - ring.x()[j]) + Math.abs(ring.y()[i] - ring.y()[j])
          > block * lattice.stepMm()) {
        return true;
      }
    }
    return false;
  }

  /** Those rings that anything may be near to. */
  public List<Ring> near(List<Ring> rings) {
    return rings.stream().filter(this::nearAny).toList();
  }

  /** Whether the node's block is near. */
  public boolean has(int column, int row) {
    return near[row / block * across + column / block];
  }

  /** Hands over all nodes of near blocks, as runs of neighbours in a row, row by row. */
  public void eachRun(Sweep.Run run) {
    for (int j = 0; j < lattice.rows(); j++) {
      eachRun(j, run);
    }
  }

  /** Those of one row. */
  public void eachRun(int row, Sweep.Run run) {
    int base = row * lattice.columns();
    int blocks = row / block * across;
    int a = 0;
    while (a < across) {
      if (!near[blocks + a]) {
        a++;
        continue;
      }
      int from = a;
      while (a < across && near[blocks + a]) {
        a++;
      }
      run.nodes(base + from * block, base + Math.min(lattice.columns(), a * block) - 1);
    }
  }

  /** Last column of the block that a column lies in. */
  public int lastOfBlock(int column) {
    return (column / block + 1) * block - 1;
  }

  /** Whether a row of nodes is the first of its blocks. */
  public boolean firstOfBlocks(int row) {
    return row % block == 0;
  }

  /** Whether any block in a row of nodes is near. */
  public boolean anyInRow(int row) {
    int from = row / block * across;
    for (int a = from; a < from + across; a++) {
      if (near[a]) {
        return true;
      }
    }
    return false;
  }
}
