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
 * @param travelMm way of the rapids, seen from above
 * @param travelBoundMm no order of the same stretches, each in its direction, needs less: the
 *     minimum spanning tree over the gaps between them (references.md, section 7, bound 5)
 * @param bytes size of the program
 * @param plainBytes its size with every arc as straight lines within the tolerance that arcs are
 *     fitted to, from the mean length of its lines
 * @param cutMm way in the cut at one depth
 * @param wideMm of it, at less than the cutter's feed, as the cut is wider than the stepover
 * @param longestMm longest stretch of that in one go
 * @param longestX where that begins, panel mm; 0 when there is none
 * @param longestY the same
 * @param longestFeed least feed on it, mm/min; 0 when there is none
 */
public record PathFigures(
    String file,
    double travelMm,
    double travelBoundMm,
    int bytes,
    int plainBytes,
    double cutMm,
    double wideMm,
    double longestMm,
    double longestX,
    double longestY,
    double longestFeed) {

  /** Feeds are written without decimals. */
  private static final double FEED_GRAIN = 1;

  /** Figures of a program. */
  static PathFigures of(String file, Tool tool, String text, Program parsed) {
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
    private double stretch;
    private double[] stretchAt = {0, 0, 0};
    private double longest;
    private double[] longestAt = {0, 0, 0};
    private int arcBytes;
    private int chords;

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
      double[] entered = null;
      for (Program.Block block : parsed.blocks()) {
        Move move = block.move();
        boolean rapid = move.kind() == Move.Kind.RAPID;
        if (rapid) {
          travel += Math.hypot(move.x() - x, move.y() - y);
          if (entered != null) {
            stretches.add(new double[] {entered[0], entered[1], x, y});
            entered = null;
          }
          endStretch();
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
      endStretch();
      if (entered != null) {
        stretches.add(new double[] {entered[0], entered[1], x, y});
      }
      int bytes = text.length();
      double line = (double) bytes / lines.length;
      return new PathFigures(
          file,
          travel,
          TravelBound.ofStretches(stretches, parsed.startX(), parsed.startY()),
          bytes,
          (int) Math.round(bytes - arcBytes + chords * line),
          cut,
          wide,
          longest,
          longestAt[0],
          longestAt[1],
          longestAt[2]);
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
      if (stretch == 0) {
        stretchAt = new double[] {x, y, move.feedMmPerMin()};
      }
      stretch += length;
      stretchAt[2] = Math.min(stretchAt[2], move.feedMmPerMin());
    }

    private void endStretch() {
      if (stretch > longest) {
        longest = stretch;
        longestAt = stretchAt;
      }
      stretch = 0;
    }

    private void arc(ArcGeometry arc, String line) {
      double off = Math.min(1, PathOptions.ARC_TOLERANCE_MM / Math.max(1e-9, arc.radius()));
      chords += Math.max(1, (int) Math.ceil(Math.abs(arc.sweep()) / (2 * Math.acos(1 - off))));
      arcBytes += line.length() + 1;
    }
  }
}
