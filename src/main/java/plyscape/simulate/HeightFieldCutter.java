package plyscape.simulate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import plyscape.grid.CellFrame;
import plyscape.machine.Tool;
import plyscape.simulate.stroke.Stroke;
import plyscape.simulate.stroke.ToolForm;

/**
 * Cuts the strokes of a program into a height field in their order and gives the contacts that must
 * not be.
 *
 * <p>A cell's depth is that at its centre, exact but for the rounding to a float: no stepping along
 * the path, so the cell size decides only how fine the panel is looked at. A cell is cut when its
 * centre is within the radius, edge included. Bands of rows are cut on all processors; as each band
 * sees all strokes in order, the outcome doesn't depend on how many there are.
 */
final class HeightFieldCutter {

  /**
   * Slack of contact checks: sideways, so that arcs written as chords may rub along a wall they
   * made, mm.
   */
  private static final double TOUCH_ASIDE_MM = 0.01;

  /** And in depth, for Z rounded to three decimals on both sides, mm. */
  private static final double TOUCH_DEPTH_MM = 0.005;

  private static final int ROWS_PER_BAND = 64;

  private final HeightField field;
  private final Tool tool;
  private final ToolForm form;
  private final double widest;
  private final Rim rim;
  private final double flatnessMm;
  private final float[] uncut;
  private final double highest;
  private volatile SharedLoop running;
  private BiteGauge deepest;

  /**
   * Over a field, which is changed.
   *
   * @param flatnessMm how near rapids may come to the uncut face, mm
   * @param rim where the wood that a stroke takes isn't counted as its bite
   * @param uncut depths before the first cut, or null where they are 0
   * @param highest the least of them, at most 0
   */
  HeightFieldCutter(
      HeightField field, Tool tool, double flatnessMm, Rim rim, float[] uncut, double highest) {
    this.uncut = uncut;
    this.highest = highest;
    this.field = field;
    this.tool = tool;
    this.rim = rim;
    this.flatnessMm = flatnessMm;
    form = ToolForm.of(tool);
    widest =
        Math.max(tool.radiusMm(), Math.max(tool.shankDiameterMm(), tool.holderDiameterMm()) / 2);
  }

  /** Takes part in a cut that another thread has begun, until there is nothing more to take. */
  void help() {
    SharedLoop loop = running;
    if (loop != null) {
      loop.help();
    }
  }

  /** Cuts; contacts come in the order of strokes. */
  List<Contact> cut(List<Stroke> strokes) {
    Stroke[] all = strokes.toArray(Stroke[]::new);
    int[][] touched = byBand(all);
    List<List<Contact>> found = new ArrayList<>(Collections.nCopies(touched.length, List.of()));
    BiteGauge[] gauges = new BiteGauge[touched.length];
    running =
        new SharedLoop(
            touched.length,
            index -> {
              Band band = new Band(index, all);
              found.set(index, band.cut(all, touched[index]));
              gauges[index] = band.gauge;
            });
    running.run();
    deepest = Arrays.stream(gauges).reduce(BiteGauge::with).orElseThrow();
    TreeMap<Long, Contact> merged = new TreeMap<>();
    for (List<Contact> list : found) {
      for (Contact c : list) {
        merged.merge(c.stroke() * 4L + c.kind().ordinal(), c, Contact::with);
      }
    }
    List<Contact> contacts = new ArrayList<>(merged.values());
    contacts.sort(Comparator.comparingInt(Contact::stroke));
    return contacts;
  }

  /** The deepest bite of the strokes that were cut. */
  BiteGauge deepest() {
    return deepest;
  }

  /** Indices of the strokes that come into each band, in their order. */
  private int[][] byBand(Stroke[] strokes) {
    CellFrame frame = field.frame();
    int bands = (frame.rows() + ROWS_PER_BAND - 1) / ROWS_PER_BAND;
    int[][] touched = new int[bands][16];
    int[] counts = new int[bands];
    double bandMm = ROWS_PER_BAND * frame.cellY();
    for (int i = 0; i < strokes.length; i++) {
      Stroke stroke = strokes[i];
      if (stroke.deepestTip() <= highest - (stroke.mustNotCut() ? flatnessMm : 0)) {
        continue; // over the top face all the way
      }
      int from = (int) Math.max(0, Math.floor((stroke.minY() - widest - frame.minY()) / bandMm));
      int to =
          (int) Math.min(bands - 1, Math.floor((stroke.maxY() + widest - frame.minY()) / bandMm));
      for (int band = from; band <= to; band++) {
        if (counts[band] == touched[band].length) {
          touched[band] = Arrays.copyOf(touched[band], 2 * counts[band]);
        }
        touched[band][counts[band]++] = i;
      }
    }
    for (int band = 0; band < bands; band++) {
      touched[band] = Arrays.copyOf(touched[band], counts[band]);
    }
    return touched;
  }

  /** Some rows of the field, cut by one thread. */
  private final class Band {

    private final CellFrame frame = field.frame();
    private final float[] depth = field.depth();
    private final int firstRow;
    private final int endRow;
    private final double[] spans = new double[8];
    private final List<Contact> contacts = new ArrayList<>();
    private final BiteGauge gauge;
    private int now;

    Band(int index, Stroke[] strokes) {
      gauge = new BiteGauge(frame, rim, strokes, form);
      firstRow = index * ROWS_PER_BAND;
      endRow = Math.min(frame.rows(), firstRow + ROWS_PER_BAND);
    }

    List<Contact> cut(Stroke[] strokes, int[] indices) {
      for (int i : indices) {
        Stroke stroke = strokes[i];
        now = i;
        if (stroke.mustNotCut()) {
          check(stroke, i, form, 0, Contact.Kind.TOOL);
          if (flatnessMm > 0 && !stroke.straightUp()) {
            check(stroke, i, form, -flatnessMm, Contact.Kind.FACE);
          }
        }
        if (stroke.deepestTip() <= highest) {
          continue;
        }
        if (form.flat() && stroke.ends().z0() == stroke.ends().z1()) {
          // Strokes hang together, so the one before has cut the disk about this one's start.
          fill(stroke, form, i > 0);
        } else {
          carve(stroke, form);
        }
        if (tool.shankDiameterMm() > 0) {
          check(
              stroke,
              i,
              ToolForm.cylinder(tool.shankDiameterMm() / 2),
              tool.fluteLengthMm(),
              Contact.Kind.SHANK);
        }
        if (tool.holderDiameterMm() > 0 && tool.stickoutMm() > 0) {
          check(
              stroke,
              i,
              ToolForm.cylinder(tool.holderDiameterMm() / 2),
              tool.stickoutMm(),
              Contact.Kind.HOLDER);
        }
      }
      return contacts;
    }

    private int first(Stroke stroke, double r) {
      return Math.max(
          firstRow,
          (int) Math.ceil((stroke.minY() - r - frame.minY()) / frame.cellY() - 0.5 - 1e-9));
    }

    private int last(Stroke stroke, double r) {
      return Math.min(
          endRow - 1,
          (int) Math.floor((stroke.maxY() + r - frame.minY()) / frame.cellY() - 0.5 + 1e-9));
    }

    private int firstColumn(double x) {
      double u = (x - frame.minX()) / frame.cellX() - 0.5 - 1e-9;
      if (u <= 0) {
        return 0;
      }
      int whole = (int) u; // a cast: asked for every row of every stroke
      return whole < u ? whole + 1 : whole;
    }

    private int lastColumn(double x) {
      double u = (x - frame.minX()) / frame.cellX() - 0.5 + 1e-9;
      if (u < 0) {
        return -1;
      }
      return u < frame.columns() ? (int) u : frame.columns() - 1;
    }

    /**
     * A flat cutter at one depth: whole runs of cells, without the disk about the start when that
     * is cut already.
     */
    private void fill(Stroke stroke, ToolForm form, boolean startIsCut) {
      float z = (float) stroke.ends().z0();
      double r = form.radius();
      int last = last(stroke, r);
      for (int row = first(stroke, r); row <= last; row++) {
        double py = frame.centreY(row);
        int n = stroke.spans(py, r, spans);
        double half =
            startIsCut ? r * r - (py - stroke.ends().y0()) * (py - stroke.ends().y0()) : -1;
        half = half > 0 ? Math.sqrt(half) : -1;
        for (int k = 0; k < n; k++) {
          if (half < 0) {
            fill(row, spans[2 * k], spans[2 * k + 1], z);
          } else {
            fill(row, spans[2 * k], Math.min(spans[2 * k + 1], stroke.ends().x0() - half), z);
            fill(row, Math.max(spans[2 * k], stroke.ends().x0() + half), spans[2 * k + 1], z);
          }
        }
      }
    }

    private void fill(int row, double fromX, double toX, float z) {
      if (fromX > toX) {
        return;
      }
      int base = row * frame.columns();
      int to = base + lastColumn(toX);
      float known = z - gauge.deepestMm(); // not deeper than this before: a deeper bite
      for (int i = base + firstColumn(fromX); i <= to; i++) {
        if (depth[i] < z) {
          if (depth[i] < known) {
            gauge.deeper(now, i, depth[i], z);
            known = z - gauge.deepestMm();
          }
          depth[i] = z;
        }
      }
    }

    /** Any cutter, any slope: each cell on its own. */
    private void carve(Stroke stroke, ToolForm form) {
      float deepest = (float) stroke.deepestTip();
      int last = last(stroke, form.radius());
      for (int row = first(stroke, form.radius()); row <= last; row++) {
        double py = frame.centreY(row);
        int n = stroke.spans(py, form.radius(), spans);
        int base = row * frame.columns();
        for (int k = 0; k < n; k++) {
          int to = lastColumn(spans[2 * k + 1]);
          for (int column = firstColumn(spans[2 * k]); column <= to; column++) {
            if (depth[base + column] < deepest) {
              float z = (float) stroke.deepest(form, frame.centreX(column), py);
              lower(base + column, z);
            }
          }
        }
      }
    }

    private void lower(int cell, float z) {
      if (depth[cell] < z) {
        if (z - depth[cell] > gauge.deepestMm()) {
          gauge.deeper(now, cell, depth[cell], z);
        }
        depth[cell] = z;
      }
    }

    /** Whether a cell is uncut and lower than what comes over it. */
    private boolean untouched(int cell, double tip) {
      float face = uncut == null ? 0 : uncut[cell];
      return depth[cell] == face && tip <= face;
    }

    /** Notes where a form that hangs {@code above} over the tip would be in stock. */
    private void check(Stroke stroke, int index, ToolForm form, double above, Contact.Kind kind) {
      if (stroke.deepestTip() - above - highest <= TOUCH_DEPTH_MM
          || form.radius() <= TOUCH_ASIDE_MM) {
        return;
      }
      double r = form.radius() - TOUCH_ASIDE_MM;
      double worst = TOUCH_DEPTH_MM;
      double soonest = Double.POSITIVE_INFINITY;
      int last = last(stroke, r);
      for (int row = first(stroke, r); row <= last; row++) {
        double py = frame.centreY(row);
        int n = stroke.spans(py, r, spans);
        int base = row * frame.columns();
        for (int k = 0; k < n; k++) {
          int to = lastColumn(spans[2 * k + 1]);
          for (int column = firstColumn(spans[2 * k]); column <= to; column++) {
            if (stroke.deepestTip() - above - depth[base + column] <= TOUCH_DEPTH_MM
                || kind == Contact.Kind.FACE && !untouched(base + column, stroke.deepestTip())) {
              continue; // below anything that comes here
            }
            double px = frame.centreX(column);
            double excess = stroke.deepest(form, px, py) - above - depth[base + column];
            if (excess > TOUCH_DEPTH_MM) {
              worst = Math.max(worst, excess);
              soonest = Math.min(soonest, stroke.nearest(px, py));
            }
          }
        }
      }
      if (soonest <= 1) {
        contacts.add(new Contact(index, kind, soonest, worst));
      }
    }
  }
}
