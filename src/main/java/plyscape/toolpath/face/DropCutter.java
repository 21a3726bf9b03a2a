package plyscape.toolpath.face;

import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * How deep a cutter's tip may go at a place so that the cutter touches nothing that is to stay: no
 * wanted face, no upper edge of a wall, and no more wood at once than its stepdown; mm, positive
 * down. The faces are looked at on the lattice, the edges at their own close points.
 */
final class DropCutter {

  /**
   * A flat cutter's rim passes between nodes: those up to half a diagonal beyond it stand for what
   * it touches, in steps.
   */
  private static final double NODE_REACH = 0.71;

  /** Wood no higher than this over its face stays, mm. */
  private static final double LEAST_WOOD_MM = 0.01;

  private final FaceLattice lattice;
  private final FaceBorders borders;
  private final CutterForm form;
  private final double deepestMm;

  /** Nodes under the cutter, from the axis outwards: offset in the lattice, height. */
  private final int[] offset;

  private final float[] height;
  private final int around;

  private final double rimSquared;

  /** Heights from the axis outwards, by rows to the side. */
  private final float[][] profiles;

  private float[] limit;
  private float[] leastLimit;
  private NodeTiles limitTiles;
  private float[] leastStock;

  /** Of wood that may be taken off: without rests. */
  private NodeTiles stockTiles;

  /**
   * @param deepestMm the flutes' length: no deeper
   */
  DropCutter(FaceLattice lattice, FaceBorders borders, CutterForm form, double deepestMm) {
    this.lattice = lattice;
    this.borders = borders;
    this.form = form;
    this.deepestMm = deepestMm;
    double step = lattice.stepMm;
    around = around(form, step);
    double r2 = form.radiusMm() * form.radiusMm();
    rimSquared = form.flat() ? Math.pow(form.radiusMm() + NODE_REACH * step, 2) : r2;
    int wide = (int) Math.floor(Math.sqrt(rimSquared) / step);
    int[][] nodes =
        IntStream.rangeClosed(-wide, wide)
            .boxed()
            .flatMap(
                row ->
                    IntStream.rangeClosed(-wide, wide).mapToObj(column -> new int[] {column, row}))
            .filter(o -> (o[0] * o[0] + o[1] * o[1]) * step * step <= rimSquared)
            .sorted(Comparator.comparingInt(o -> o[0] * o[0] + o[1] * o[1]))
            .toArray(int[][]::new);
    offset = new int[nodes.length];
    height = new float[nodes.length];
    for (int k = 0; k < nodes.length; k++) {
      int column = nodes[k][0];
      int row = nodes[k][1];
      offset[k] = row * lattice.columns + column;
      double squared = (column * column + row * row) * step * step;
      height[k] = (float) form.height(Math.min(squared, r2));
    }
    profiles = new float[around + 1][];
    for (int row = 0; row <= around; row++) {
      int reach = (int) Math.floor(Math.sqrt(Math.max(0, r2 - row * row * step * step)) / step);
      profiles[row] = new float[reach + 1];
      for (int column = 0; column <= reach; column++) {
        double squared = (column * column + row * row) * step * step;
        profiles[row][column] = (float) form.height(Math.min(squared, r2));
      }
    }
  }

  /** Nodes that a cutter reaches to each side. */
  static int around(CutterForm form, double stepMm) {
    return (int) Math.floor(form.radiusMm() / stepMm);
  }

  int around() {
    return around;
  }

  CutterForm form() {
    return form;
  }

  /**
   * Takes the stock as it is now: from here on no more than a stepdown below it.
   *
   * @param beside whether wood to be taken off beside a node counts as standing at it too: a steep
   *     flank may meet its edge anywhere between
   * @return whether the stepdown holds the cutter off some face, rests apart
   */
  boolean begin(double stepdownMm, boolean beside) {
    float[] next = limit == null ? new float[lattice.target.length] : limit;
    float down = (float) stepdownMm;
    boolean[] held = new boolean[lattice.rows];
    IntStream.range(0, lattice.rows)
        .parallel()
        .forEach(
            row -> {
              for (int i = row * lattice.columns; i < (row + 1) * lattice.columns; i++) {
                float wood = beside ? Math.min(lattice.stock[i], woodBeside(i)) : lattice.stock[i];
                next[i] = Math.min(lattice.target[i], wood + down);
                held[row] |= next[i] < lattice.target[i] && !lattice.rest[i];
              }
            });
    limit = next;
    leastLimit = lattice.leastAround(limit, around);
    limitTiles = new NodeTiles(lattice, limit, null);
    look();
    return IntStream.range(0, held.length).anyMatch(row -> held[row]);
  }

  /** Depth of the highest wood around a node that is to be taken off. */
  private float woodBeside(int node) {
    float least = Float.POSITIVE_INFINITY;
    for (int row = -lattice.columns; row <= lattice.columns; row += lattice.columns) {
      for (int other = node + row - 1; other <= node + row + 1; other++) {
        if (other >= 0
            && other < lattice.stock.length
            && !lattice.rest[other]
            && lattice.target[other] - lattice.stock[other] > LEAST_WOOD_MM) {
          least = Math.min(least, lattice.stock[other]);
        }
      }
    }
    return least;
  }

  /** Looks at the stock again, after it was cut. */
  void look() {
    leastStock = lattice.leastAround(lattice.stock, around);
    stockTiles = new NodeTiles(lattice, lattice.stock, lattice.rest);
  }

  /** Depth at a node. */
  double atNode(int column, int row) {
    float best = form.flat() ? flatAt(column, row) : roundAt(column, row);
    return borders.deepest(form, lattice.u(column), lattice.v(row), best);
  }

  private float flatAt(int column, int row) {
    int node = row * lattice.columns + column;
    float least = leastLimit[lattice.blockOf(column, row)];
    float best = (float) deepestMm;
    for (int k = 0; k < offset.length; k++) {
      if (height[k] + least >= best) {
        break;
      }
      best = Math.min(best, limit[node + offset[k]] + height[k]);
    }
    return best;
  }

  private float roundAt(int column, int row) {
    float best = Math.min((float) deepestMm, limit[row * lattice.columns + column]);
    int turns = 2 * (around / NodeTiles.SIDE + 1);
    for (int a = 0; a <= turns; a++) {
      int tileRow = NodeTiles.outward(row / NodeTiles.SIDE, a);
      int up = NodeTiles.away(row, tileRow);
      if (tileRow < 0 || up > around) {
        continue;
      }
      float[] profile = profiles[up];
      for (int b = 0; b <= turns; b++) {
        int tileColumn = NodeTiles.outward(column / NodeTiles.SIDE, b);
        int aside = NodeTiles.away(column, tileColumn);
        if (tileColumn >= 0
            && aside < profile.length
            && limitTiles.least[tileRow * limitTiles.columns + tileColumn] + profile[aside]
                < best) {
          best = Math.min(best, roundOver(tileColumn, tileRow, column, row));
        }
      }
    }
    return best;
  }

  /** Depth at a node as far as the nodes of one tile hold the cutter off. */
  private float roundOver(int tileColumn, int tileRow, int column, int row) {
    float best = Float.POSITIVE_INFINITY;
    int fromColumn = Math.max(tileColumn * NodeTiles.SIDE, column - around);
    int toColumn = Math.min(tileColumn * NodeTiles.SIDE + NodeTiles.SIDE - 1, column + around);
    int toRow = Math.min(tileRow * NodeTiles.SIDE + NodeTiles.SIDE - 1, row + around);
    for (int r = Math.max(tileRow * NodeTiles.SIDE, row - around); r <= toRow; r++) {
      float[] profile = profiles[r < row ? row - r : r - row];
      for (int c = fromColumn; c <= toColumn; c++) {
        int aside = c < column ? column - c : c - column;
        if (aside < profile.length) {
          float at = limit[r * lattice.columns + c] + profile[aside];
          best = at < best ? at : best;
        }
      }
    }
    return best;
  }

  /** Depth at any place of the carved area. */
  double at(double u, double v) {
    double step = lattice.stepMm;
    double r2 = form.radiusMm() * form.radiusMm();
    double r = Math.sqrt(rimSquared);
    int nearColumn = clamp((int) Math.round((u - lattice.minU) / step), lattice.columns);
    int nearRow = clamp((int) Math.round((v - lattice.minV) / step), lattice.rows);
    double best =
        Math.min(
            deepestMm,
            limit[nearRow * lattice.columns + nearColumn] + form.height(0.5 * step * step));
    int toRow = clamp((int) Math.floor((v + r - lattice.minV) / step), lattice.rows);
    int toColumn = clamp((int) Math.floor((u + r - lattice.minU) / step), lattice.columns);
    for (int row = clamp((int) Math.ceil((v - r - lattice.minV) / step), lattice.rows);
        row <= toRow;
        row++) {
      double dv = lattice.v(row) - v;
      for (int column = clamp((int) Math.ceil((u - r - lattice.minU) / step), lattice.columns);
          column <= toColumn;
          column++) {
        float at = limit[row * lattice.columns + column];
        if (at < best) {
          double du = lattice.u(column) - u;
          double d2 = du * du + dv * dv;
          if (d2 <= rimSquared) {
            best = Math.min(best, at + form.height(Math.min(d2, r2)));
          }
        }
      }
    }
    return borders.deepest(form, u, v, best);
  }

  private static int clamp(int index, int count) {
    return Math.max(0, Math.min(count - 1, index));
  }

  /**
   * Whether the cutter with its tip so deep at a node takes off more than a tolerance anywhere but
   * from rests of roughing.
   *
   * @param acrossRows look no farther to the sides of a row than this
   */
  boolean takesOff(int column, int row, double depth, double toleranceMm, int acrossRows) {
    float least = leastStock[lattice.blockOf(column, row)];
    float tip = (float) (depth - toleranceMm);
    return tip > least && anyTakesOff(column, row, tip, Math.min(acrossRows, around));
  }

  private boolean anyTakesOff(int column, int row, float tip, int across) {
    int toTileRow = Math.min(lattice.rows - 1, row + across) / NodeTiles.SIDE;
    int toTile = Math.min(lattice.columns - 1, column + around) / NodeTiles.SIDE;
    for (int tileRow = Math.max(0, row - across) / NodeTiles.SIDE;
        tileRow <= toTileRow;
        tileRow++) {
      float[] profile = profiles[NodeTiles.away(row, tileRow)];
      for (int tile = Math.max(0, column - around) / NodeTiles.SIDE; tile <= toTile; tile++) {
        int aside = NodeTiles.away(column, tile);
        if (aside < profile.length
            && tip - profile[aside] > stockTiles.least[tileRow * stockTiles.columns + tile]
            && takesOffTile(tile, tileRow, column, row, tip, across)) {
          return true;
        }
      }
    }
    return false;
  }

  private boolean takesOffTile(int tile, int tileRow, int column, int row, float tip, int across) {
    int fromColumn = Math.max(tile * NodeTiles.SIDE, column - around);
    int toColumn = Math.min(tile * NodeTiles.SIDE + NodeTiles.SIDE - 1, column + around);
    int toRow = Math.min(tileRow * NodeTiles.SIDE + NodeTiles.SIDE - 1, row + across);
    for (int r = Math.max(tileRow * NodeTiles.SIDE, row - across); r <= toRow; r++) {
      float[] profile = profiles[r < row ? row - r : r - row];
      for (int c = fromColumn; c <= toColumn; c++) {
        int aside = c < column ? column - c : c - column;
        int node = r * lattice.columns + c;
        if (aside < profile.length
            && tip - profile[aside] > lattice.stock[node]
            && !lattice.rest[node]) {
          return true;
        }
      }
    }
    return false;
  }

  /**
   * Depth down to which the tip meets nothing but air in a stock, as far as nodes tell, with a
   * margin for what lies between them.
   */
  double airAbove(float[] stock, double u, double v) {
    double step = lattice.stepMm;
    double slack = 1.5 * step;
    double r = form.radiusMm() + slack;
    double best = Double.POSITIVE_INFINITY;
    int toRow = clamp((int) Math.ceil((v + r - lattice.minV) / step), lattice.rows);
    int toColumn = clamp((int) Math.ceil((u + r - lattice.minU) / step), lattice.columns);
    for (int row = clamp((int) Math.floor((v - r - lattice.minV) / step), lattice.rows);
        row <= toRow;
        row++) {
      double dv = lattice.v(row) - v;
      for (int column = clamp((int) Math.floor((u - r - lattice.minU) / step), lattice.columns);
          column <= toColumn;
          column++) {
        float at = stock[row * lattice.columns + column];
        double du = lattice.u(column) - u;
        double d = Math.sqrt(du * du + dv * dv);
        if (at < best && d <= r) {
          double near = Math.max(0, d - slack);
          best = Math.min(best, at + form.height(near * near));
        }
      }
    }
    return best;
  }

  /** Lowers the stock by the cutter at nodes of a row, only in some rows. */
  void stamp(int row, int[] columns, float[] depths, int count, int fromRow, int endRow) {
    int width = lattice.columns;
    for (int other = Math.max(fromRow, row - around);
        other < Math.min(endRow, row + around + 1);
        other++) {
      float[] profile = profiles[Math.abs(other - row)];
      int reach = profile.length - 1;
      int base = other * width;
      for (int i = 0; i < count; i++) {
        float least = leastStock[lattice.blockOf(columns[i], row)];
        for (int k = 0; k <= reach; k++) {
          float z = depths[i] - profile[k];
          if (z <= least) {
            break;
          }
          int right = base + columns[i] + k;
          int left = base + columns[i] - k;
          lattice.stock[right] = Math.max(lattice.stock[right], z);
          lattice.stock[left] = Math.max(lattice.stock[left], z);
        }
      }
    }
  }
}
