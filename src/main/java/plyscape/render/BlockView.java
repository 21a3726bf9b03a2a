package plyscape.render;

import plyscape.grid.Box;
import plyscape.layup.PlyDepth;
import plyscape.plan.Landscape;

/**
 * A block cut out of the finished panel, seen from the south-west and from above without
 * perspective: walls and the block's own sides show the stripes of the plies that they cut through.
 * Every column of the picture is walked from the front to the back; what lies behind something
 * higher on the picture is hidden.
 */
final class BlockView {

  /**
   * Turned so that the south side and some of the west side show: the eye stands in the south-west.
   */
  private static final double YAW = Math.toRadians(-28);

  /** Height of the eye above the horizon. */
  private static final double PITCH = Math.toRadians(48);

  private static final double CELL_MM = 0.2;
  private static final double SOUTH_LIGHT = 0.66;
  private static final double WEST_LIGHT = 0.84;
  private static final int GLUE = 0x3a2f26;

  /** Of the line around the block. */
  private static final int EDGE = 0x6b6258;

  /** A pixel that the block doesn't cover: no colour. */
  private static final int NOTHING = -1;

  private final Landscape plan;
  private final Box block;
  private final double stretch;
  private final PlyRaster raster;
  private final float[] height;
  private final float[] soft;
  private final float[] light;
  private final double floor;

  /** A block of the plan's panel; {@code stretch} makes heights larger. */
  BlockView(Landscape plan, Box block, double stretch) {
    this.plan = plan;
    this.block = block;
    this.stretch = stretch;
    double cell = CELL_MM * Math.max(1, Math.max(block.width(), block.height()) / 260);
    raster = PlyRaster.of(plan.tiling(), block, cell);
    float[] byPly = new float[plan.depths().plies() + 1];
    for (int i = 0; i < byPly.length; i++) {
      byPly[i] = (float) -FinishedFace.depthMm(plan, i);
    }
    float[] faces = FinishedFace.heights(plan, raster, block.minX(), block.maxY());
    height = faces == null ? new float[raster.plies().length] : faces;
    for (int i = 0; i < height.length && faces == null; i++) {
      height[i] = byPly[raster.plies()[i]];
    }
    soft = Relief.soften(height, raster.columns(), cell);
    light = Relief.light(height, soft, raster.columns(), cell);
    floor = -plan.thicknessMm();
  }

  /** Draws it, as wide as said; the height follows. Smoothed from twice as many pixels each way. */
  Canvas draw(int widthPx) {
    double across = block.width() * Math.cos(YAW) + block.height() * Math.abs(Math.sin(YAW));
    double away = block.width() * Math.abs(Math.sin(YAW)) + block.height() * Math.cos(YAW);
    double scale = 2 * widthPx / across;
    double tall = away * Math.sin(PITCH) + plan.thicknessMm() * stretch * Math.cos(PITCH);
    int w = 2 * widthPx;
    int h = 2 * (int) Math.ceil(tall * scale / 2 + 1);
    Canvas large = new Canvas(w, h, NOTHING);
    java.util.stream.IntStream.range(0, w)
        .parallel()
        .forEach(x -> new Column(large, x, scale).draw(across, away));
    return halve(large);
  }

  /** A column of the picture's pixels. */
  private final class Column {

    private final Canvas canvas;
    private final int pixelX;

    /** Pixels a mm. */
    private final double scale;

    private final double sin = Math.sin(PITCH);
    private final double cos = Math.cos(PITCH) * stretch;

    Column(Canvas canvas, int pixelX, double scale) {
      this.canvas = canvas;
      this.pixelX = pixelX;
      this.scale = scale;
    }

    /** Walks over the block, which is so wide across the view and so long away from it. */
    void draw(double across, double away) {
      double u = (pixelX + 0.5) / scale - across / 2;
      double middleX = (block.minX() + block.maxX()) / 2;
      double middleY = (block.minY() + block.maxY()) / 2;
      double lowest = -away / 2 * sin + floor * cos;
      int drawn = -1;
      double step = Math.min(raster.cellMm() / 2, 0.7 / (sin * scale));
      boolean inside = false;
      for (double v = -away / 2; v <= away / 2; v += step) {
        double x = middleX + u * Math.cos(YAW) - v * Math.sin(YAW);
        double y = middleY + u * Math.sin(YAW) + v * Math.cos(YAW);
        if (!block.contains(x, y)) {
          if (inside) {
            return;
          }
          continue;
        }
        int cell = cell(x, y);
        if (!inside) {
          inside = true;
          drawn = (int) Math.ceil((v * sin + floor * cos - lowest) * scale) - 1;
        }
        int top = (int) Math.floor((v * sin + height[cell] * cos - lowest) * scale);
        if (top > drawn) {
          paint(drawn + 1, top, v * sin - lowest, cell, wallLight(cell, x, y));
          drawn = top;
        }
      }
    }

    /**
     * Pixels from one height on the picture to another, all at one place of the ground: wall below
     * the face, face on top.
     */
    private void paint(int from, int to, double ground, int cell, double wallLight) {
      for (int p = Math.max(from, 0); p <= to; p++) {
        double high = ((p + 0.5) / scale - ground) / cos;
        boolean wall = high < height[cell] - 1.0 / (scale * cos);
        int colour = wall ? colourAt(-high) : colourAt(-height[cell]);
        double shine = wall ? wallLight : light[cell];
        canvas.set(pixelX, canvas.height() - 1 - p, Colours.light(colour, shine));
      }
    }
  }

  /**
   * Light on a wall by the way it faces: the fall of the softened heights, on the block's own sides
   * the side.
   */
  private double wallLight(int cell, double x, double y) {
    if (x - block.minX() < raster.cellMm() || y - block.minY() < raster.cellMm()) {
      return x - block.minX() < y - block.minY() ? WEST_LIGHT : SOUTH_LIGHT;
    }
    int column = cell % raster.columns();
    int row = cell / raster.columns();
    double east = at(column + 1, row) - at(column - 1, row);
    double north = at(column, row - 1) - at(column, row + 1);
    double length = Math.abs(east) + Math.abs(north);
    return length == 0
        ? SOUTH_LIGHT
        : SOUTH_LIGHT + (WEST_LIGHT - SOUTH_LIGHT) * Math.max(east, 0) / length;
  }

  private double at(int column, int row) {
    int x = Math.min(Math.max(column, 0), raster.columns() - 1);
    int y = Math.min(Math.max(row, 0), raster.rows() - 1);
    return soft[y * raster.columns() + x];
  }

  private int cell(double x, double y) {
    int column = (int) ((x - block.minX()) / raster.cellMm());
    int row = (int) ((block.maxY() - y) / raster.cellMm());
    return Math.min(row, raster.rows() - 1) * raster.columns()
        + Math.min(column, raster.columns() - 1);
  }

  private int colourAt(double depth) {
    for (PlyDepth ply : plan.depths()) {
      if (depth < ply.topMm()) {
        return GLUE;
      }
      if (depth <= ply.bottomMm()) {
        return ply.ply().rgb();
      }
    }
    return plan.depths().of(plan.depths().plies()).ply().rgb();
  }

  /** Means of four pixels; where the block ends, a line, or pale wood would run into the paper. */
  private static Canvas halve(Canvas large) {
    Canvas small = new Canvas(large.width() / 2, large.height() / 2, Colours.PAPER);
    for (int y = 0; y < small.height(); y++) {
      for (int x = 0; x < small.width(); x++) {
        int drawn = 0;
        int[] sum = new int[3];
        for (int k = 0; k < 4; k++) {
          int pixel = at(large, 2 * x + k % 2, 2 * y + k / 2);
          drawn += pixel == NOTHING ? 0 : 1;
          int colour = pixel == NOTHING ? Colours.PAPER : pixel;
          sum[0] += colour >> 16 & 255;
          sum[1] += colour >> 8 & 255;
          sum[2] += colour & 255;
        }
        int mean = (sum[0] + 2) / 4 << 16 | (sum[1] + 2) / 4 << 8 | (sum[2] + 2) / 4;
        small.set(x, y, drawn > 0 && rim(large, x, y) ? Colours.mix(mean, EDGE, 0.7) : mean);
      }
    }
    return small;
  }

  /** Whether a small pixel touches what isn't drawn. */
  private static boolean rim(Canvas large, int x, int y) {
    for (int dy = -1; dy <= 2; dy++) {
      for (int dx = -1; dx <= 2; dx++) {
        if (at(large, 2 * x + dx, 2 * y + dy) == NOTHING) {
          return true;
        }
      }
    }
    return false;
  }

  private static int at(Canvas canvas, int x, int y) {
    return x < 0 || y < 0 || x >= canvas.width() || y >= canvas.height()
        ? NOTHING
        : canvas.pixels()[y * canvas.width() + x];
  }
}
