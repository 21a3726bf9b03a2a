package plyscape.region;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.MultiPolygon;
import plyscape.grid.Box;
import plyscape.planar.Chain;
import plyscape.planar.GridUnits;
import plyscape.planar.Linework;
import plyscape.planar.PlanarMap;

/**
 * Cuts one tiling along the seams of panels that butt. The seams are noded together with all
 * outlines at once, so that the two sides of a seam have the same vertices, to the last digit; near
 * a crossing an outline moves by less than 0.001 mm, as the crossing is put on the grid.
 */
public final class TileCutter {

  /**
   * Components of the winding vector: a region's ply, and which column and row of panels it lies
   * in, from 1.
   */
  private static final int PLY = 0;

  private static final int COLUMN = 1;
  private static final int ROW = 2;

  /** Not on any panel. */
  private static final int NONE = -1;

  private final Tiling whole;
  private final int[] seamX;
  private final int[] seamY;
  private final int rows;

  /** Of each panel, column by column: plies of its faces, those beside it being face 0. */
  private final List<int[]> plies = new ArrayList<>();

  /** The lines that bound them. */
  private final List<List<Chain>> chains = new ArrayList<>();

  /**
   * Prepares the cuts.
   *
   * @param whole over all panels, the lower left corner of the lower left panel at the origin
   * @param widthMm of one panel, whole thousandths
   * @param heightMm of one panel, whole thousandths
   */
  public TileCutter(Tiling whole, double widthMm, double heightMm, int columns, int rows) {
    this.whole = whole;
    this.rows = rows;
    seamX = seams(widthMm, columns);
    seamY = seams(heightMm, rows);
    Linework lines = new Linework(3);
    for (Map.Entry<Integer, MultiPolygon> shown : whole.exposed().entrySet()) {
      lines.addMm(shown.getValue(), PLY, shown.getKey());
    }
    Box carved = whole.carved();
    for (int c = 0; c < columns; c++) {
      rectangle(
          lines,
          clip(new Box(at(seamX, c), carved.minY(), at(seamX, c + 1), carved.maxY())),
          COLUMN,
          c + 1);
    }
    for (int r = 0; r < rows; r++) {
      rectangle(
          lines,
          clip(new Box(carved.minX(), at(seamY, r), carved.maxX(), at(seamY, r + 1))),
          ROW,
          r + 1);
    }
    share(PlanarMap.of(lines), columns * rows);
  }

  /** Gives each panel its faces and lines, so that the map of all needn't be held. */
  private void share(PlanarMap map, int panels) {
    int[] panel = new int[map.faces()];
    int[] count = new int[panels];
    for (int f = 0; f < panel.length; f++) {
      int column = map.winding(f, COLUMN);
      int row = map.winding(f, ROW);
      panel[f] = column > 0 && row > 0 ? index(column - 1, row - 1) : NONE;
      if (panel[f] != NONE) {
        count[panel[f]]++;
      }
    }
    for (int p = 0; p < panels; p++) {
      plies.add(new int[count[p] + 1]);
      chains.add(new ArrayList<>());
    }
    int[] number = new int[panel.length];
    Arrays.fill(count, 0);
    for (int f = 0; f < panel.length; f++) {
      if (panel[f] != NONE) {
        number[f] = ++count[panel[f]];
        plies.get(panel[f])[number[f]] = map.winding(f, PLY);
      }
    }
    for (Chain chain : map.chains()) {
      int left = panel[chain.left()];
      int right = panel[chain.right()];
      for (int p : left == right ? new int[] {left} : new int[] {left, right}) {
        if (p != NONE) {
          int ofLeft = left == p ? number[chain.left()] : 0;
          int ofRight = right == p ? number[chain.right()] : 0;
          chains.get(p).add(new Chain(chain.x, chain.y, chain.terrain, ofLeft, ofRight));
        }
      }
    }
  }

  private int index(int column, int row) {
    return column * rows + row;
  }

  private static int[] seams(double sizeMm, int count) {
    int[] at = new int[count + 1];
    for (int i = 0; i <= count; i++) {
      at[i] = Math.multiplyExact(i, GridUnits.of(sizeMm));
    }
    return at;
  }

  private static double at(int[] seams, int i) {
    return GridUnits.mm(seams[i]);
  }

  /**
   * What of the carved area lies on a panel, in the whole's coordinates, mm; null when nothing
   * does.
   *
   * @param column from 0 at the left
   * @param row from 0 at the bottom
   */
  public Box part(int column, int row) {
    return clip(
        new Box(at(seamX, column), at(seamY, row), at(seamX, column + 1), at(seamY, row + 1)));
  }

  private Box clip(Box box) {
    Box carved = whole.carved();
    double x0 = Math.max(box.minX(), carved.minX());
    double y0 = Math.max(box.minY(), carved.minY());
    double x1 = Math.min(box.maxX(), carved.maxX());
    double y1 = Math.min(box.maxY(), carved.maxY());
    return x1 > x0 && y1 > y0 ? new Box(x0, y0, x1, y1) : null;
  }

  private static void rectangle(Linework lines, Box box, int component, int weight) {
    if (box != null) {
      int x0 = GridUnits.of(box.minX());
      int y0 = GridUnits.of(box.minY());
      int x1 = GridUnits.of(box.maxX());
      int y1 = GridUnits.of(box.maxY());
      lines.add(
          new int[] {x0, x1, x1, x0, x0}, new int[] {y0, y0, y1, y1, y0}, component, weight, true);
    }
  }

  /**
   * The tiling of one panel, in that panel's coordinates. What was given to neighbours is that of
   * the whole.
   *
   * @param column from 0 at the left
   * @param row from 0 at the bottom
   * @throws IllegalArgumentException if nothing of the carved area lies there
   */
  public Tiling tile(int column, int row) {
    Box part = part(column, row);
    if (part == null) {
      throw new IllegalArgumentException("nothing is carved in column " + column + ", row " + row);
    }
    List<Chain> lines = new ArrayList<>();
    for (Chain chain : chains.get(index(column, row))) {
      lines.add(
          new Chain(
              moved(chain.x, seamX[column]),
              moved(chain.y, seamY[row]),
              chain.terrain,
              chain.left(),
              chain.right()));
    }
    RegionMap regions = RegionMap.of(lines, plies.get(index(column, row)));
    Box own =
        new Box(
            less(part.minX(), seamX[column]), less(part.minY(), seamY[row]),
            less(part.maxX(), seamX[column]), less(part.maxY(), seamY[row]));
    return TilingBuilder.tiling(own, regions, whole.merged());
  }

  private static int[] moved(int[] values, int by) {
    int[] out = new int[values.length];
    for (int i = 0; i < out.length; i++) {
      out[i] = values[i] - by;
    }
    return out;
  }

  private static double less(double mm, int units) {
    return GridUnits.mm(GridUnits.of(mm) - units);
  }
}
