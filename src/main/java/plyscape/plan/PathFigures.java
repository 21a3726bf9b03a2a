package plyscape.plan;

import java.util.ArrayList;
import java.util.List;
import plyscape.gcode.Program;
import plyscape.machine.ArcGeometry;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.toolpath.bound.TravelBound;
import plyscape.toolpath.task.PathOptions;

/**
 * How good the paths of one program are, read off its text. Immutable.
 *
 * @param file the program
 * @param way its rapids
 * @param size of its text
 * @param width of its cuts
 */
public record PathFigures(String file, Way way, Size size, Width width) {

  /**
   * The way of the rapids, seen from above.
   *
   * @param travelMm its length
   * @param boundMm no order of the same stretches, each in its direction, needs less: the minimum
   *     spanning tree over the gaps between them (references.md, section 7, bound 5)
   */
  public record Way(double travelMm, double boundMm) {}

  /**
   * Size of the text.
   *
   * @param bytes as it is
   * @param plainBytes with every arc as straight lines within the tolerance that arcs are fitted
   *     to, from the mean length of its lines
   */
  public record Size(int bytes, int plainBytes) {}

  /**
   * How wide the cuts are.
   *
   * @param cutMm way in the cut at one depth
   * @param wideMm of it, at less than the cutter's feed, as the cut is wider than the stepover
   * @param longest longest stretch of that in one go
   */
  public record Width(double cutMm, double wideMm, Stretch longest) {}

  /**
   * A stretch of a wide cut.
   *
   * @param mm its length, 0 when there is none
   * @param x where it begins, panel mm
   * @param feed least feed on it, mm/min
   */
  public record Stretch(double mm, double x, double y, double feed) {

    /** There is none. */
    public static final Stretch NONE = new Stretch(0, 0, 0, 0);

    private Stretch plus(double more, double otherFeed) {
      return new Stretch(mm + more, x, y, Math.min(feed, otherFeed));
    }
  }

  /** Feeds are written without decimals. */
  private static final double FEED_GRAIN = 1;

  /** Figures of a program. */
  public static PathFigures of(String file, Tool tool, String text, Program parsed) {
    return new Reader(file, tool, text).read(parsed);
  }

  private static final class Reader {

    private final String file;
    private final Tool tool;
    private final String text;
    private final List<double[]> stretches = new ArrayList<>();
    private double travel;
    private double cut;
    private double wide;
    private Stretch stretch = Stretch.NONE;
    private Stretch longest = Stretch.NONE;
    private int arcBytes;
    private int chords;
    private double[] entered;

    Reader(String file, Tool tool, String text) {
      this.file = file;
      this.tool = tool;
      this.text = text;
    }

    PathFigures read(Program parsed) {
      String[] lines = text.split("\n", -1);
      double x = parsed.startX();
      double y = parsed.startY();
      double depth = parsed.startDepth();
      for (Program.Block block : parsed.blocks()) {
        Move move = block.move();
        if (move.kind() == Move.Kind.RAPID) {
          travel += Math.hypot(move.x() - x, move.y() - y);
          leave(x, y);
        } else {
          entered = entered == null ? new double[] {x, y} : entered;
          feed(x, y, depth, move);
        }
        if (move.isArc()) {
          arc(ArcGeometry.of(x, y, depth, move), lines[block.line() - 1]);
        }
        x = move.x();
        y = move.y();
        depth = move.depth();
      }
      leave(x, y);
      double line = (double) text.length() / lines.length;
      return new PathFigures(
          file,
          new Way(travel, TravelBound.ofStretches(stretches, parsed.startX(), parsed.startY())),
          new Size(text.length(), (int) Math.round(text.length() - arcBytes + chords * line)),
          new Width(cut, wide, longest));
    }

    /** The end of a run of cutting moves, if it is one. */
    private void leave(double x, double y) {
      if (entered != null) {
        stretches.add(new double[] {entered[0], entered[1], x, y});
        entered = null;
      }
      endStretch();
    }

    private void feed(double x, double y, double depth, Move move) {
      if (move.depth() != depth || depth <= 0) {
        endStretch();
        return;
      }
      double length =
          move.isArc()
              ? ArcGeometry.of(x, y, depth, move).length()
              : Math.hypot(move.x() - x, move.y() - y);
      cut += length;
      if (move.feedMmPerMin() > tool.feedMmPerMin() - FEED_GRAIN) {
        endStretch();
        return;
      }
      wide += length;
      if (stretch.mm() == 0) {
        stretch = new Stretch(0, x, y, move.feedMmPerMin());
      }
      stretch = stretch.plus(length, move.feedMmPerMin());
    }

    private void endStretch() {
      if (stretch.mm() > longest.mm()) {
        longest = stretch;
      }
      stretch = Stretch.NONE;
    }

    private void arc(ArcGeometry arc, String line) {
      double off = Math.min(1, PathOptions.ARC_TOLERANCE_MM / Math.max(1e-9, arc.radius()));
      chords += Math.max(1, (int) Math.ceil(Math.abs(arc.sweep()) / (2 * Math.acos(1 - off))));
      arcBytes += line.length() + 1;
    }
  }
}
