package plyscape.planner;

import java.util.Arrays;
import java.util.List;
import plyscape.grid.Box;
import plyscape.machine.ArcGeometry;
import plyscape.machine.Machine;
import plyscape.machine.MotionModel;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.toolpath.task.ToolRun;

/**
 * Where the time of tool runs goes. Every move is run over a raster of the stock; what it newly
 * clears tells how long the move would take if the cutter bit its full stepover all the way. The
 * parts add up to the total.
 */
final class TimeAudit {

  private static final double CELL_MM = 0.1;
  private static final double CHORD_MM = 0.4;

  private final Box box;
  private final int columns;
  private final int rows;
  private final float[] stock;
  private final Machine machine;

  /** Seconds of ideal clearing of what was newly cleared, with each run's own cutter. */
  double idealS;

  /**
   * Seconds over the ideal in moves that clear something, at their feed: walls, corners, narrow
   * rings, slots.
   */
  double narrowS;

  /** The part of that which reduced feed makes. */
  double slowFeedS;

  /** Level moves that clear nothing, at their feed. */
  double airS;

  /** Moves at feed that go down, at their feed. */
  double entryS;

  /** What acceleration and corners add to moves at feed. */
  double accelerationS;

  /** Rapids that stay at one height. */
  double travelS;

  /** Rapids up and down. */
  double liftS;

  double totalS;
  double cutMm;
  double rapidMm;
  int lifts;
  int moves;
  int arcs;

  TimeAudit(Box carved, Machine machine) {
    box = carved;
    this.machine = machine;
    columns = (int) Math.ceil(carved.width() / CELL_MM);
    rows = (int) Math.ceil(carved.height() / CELL_MM);
    stock = new float[columns * rows];
  }

  /** An audit that goes on from the panel as this one leaves it. */
  TimeAudit next() {
    var next = new TimeAudit(box, machine);
    System.arraycopy(stock, 0, next.stock, 0, stock.length);
    return next;
  }

  /** Sums that belong to others. */
  void addSums(TimeAudit other) {
    idealS += other.idealS;
    narrowS += other.narrowS;
    slowFeedS += other.slowFeedS;
    airS += other.airS;
    entryS += other.entryS;
    accelerationS += other.accelerationS;
    travelS += other.travelS;
    liftS += other.liftS;
    totalS += other.totalS;
    cutMm += other.cutMm;
    rapidMm += other.rapidMm;
    lifts += other.lifts;
    moves += other.moves;
    arcs += other.arcs;
  }

  /** Runs a tool's moves over the stock. */
  void add(ToolRun run) {
    double x = 0;
    double y = 0;
    double depth = -machine.safeHeightMm();
    Tool tool = run.tool();
    List<Move> all = run.moves();
    double[] seconds = new MotionModel(machine).times(x, y, depth, all).moveS();
    totalS += Arrays.stream(seconds).sum();
    for (int i = 0; i < seconds.length; i++) {
      Move move = all.get(i);
      account(x, y, depth, move, tool, seconds[i]);
      x = move.x();
      y = move.y();
      depth = move.depth();
    }
  }

  private void account(double x, double y, double depth, Move move, Tool tool, double seconds) {
    moves++;
    double length =
        move.isArc()
            ? ArcGeometry.of(x, y, depth, move).length()
            : Math.sqrt(
                Math.pow(move.x() - x, 2)
                    + Math.pow(move.y() - y, 2)
                    + Math.pow(move.depth() - depth, 2));
    if (move.kind() == Move.Kind.RAPID) {
      rapidMm += length;
      if (move.depth() != depth) {
        liftS += seconds;
        lifts += move.depth() < depth ? 1 : 0;
      } else {
        travelS += seconds;
      }
      return;
    }
    arcs += move.isArc() ? 1 : 0;
    cutMm += length;
    double nominal = length / move.feedMmPerMin() * 60;
    accelerationS += seconds - nominal;
    double fresh = cut(x, y, depth, move, tool.radiusMm());
    if (move.depth() != depth) {
      entryS += nominal;
    } else if (fresh < 1e-3 * length * tool.stepoverMm()) {
      airS += nominal;
    } else {
      double ideal =
          fresh * 60 / (Math.sqrt(tool.stepover()) * tool.diameterMm() * tool.feedMmPerMin());
      idealS += ideal;
      double slow = nominal - length / tool.feedMmPerMin() * 60;
      slowFeedS += slow;
      narrowS += nominal - slow - ideal;
    }
  }

  /** Area newly brought down by at least 0.01 mm, mm2. */
  private double cut(double x, double y, double depth, Move move, double radius) {
    if (!move.isArc()) {
      return capsule(x, y, move.x(), move.y(), Math.min(depth, move.depth()), radius);
    }
    ArcGeometry arc = ArcGeometry.of(x, y, depth, move);
    int n = Math.max(1, (int) Math.ceil(arc.radius() * Math.abs(arc.sweep()) / CHORD_MM));
    double area = 0;
    double fromX = x;
    double fromY = y;
    for (int i = 1; i <= n; i++) {
      double a = arc.startAngle() + arc.sweep() * i / n;
      double toX = move.centreX() + arc.radius() * Math.cos(a);
      double toY = move.centreY() + arc.radius() * Math.sin(a);
      area += capsule(fromX, fromY, toX, toY, Math.min(depth, move.depth()), radius);
      fromX = toX;
      fromY = toY;
    }
    return area;
  }

  private double capsule(double x0, double y0, double x1, double y1, double depth, double radius) {
    int row0 = Math.max(0, (int) ((Math.min(y0, y1) - radius - box.minY()) / CELL_MM));
    int row1 = Math.min(rows - 1, (int) ((Math.max(y0, y1) + radius - box.minY()) / CELL_MM));
    int column0 = Math.max(0, (int) ((Math.min(x0, x1) - radius - box.minX()) / CELL_MM));
    int column1 = Math.min(columns - 1, (int) ((Math.max(x0, x1) + radius - box.minX()) / CELL_MM));
    double dx = x1 - x0;
    double dy = y1 - y0;
    double squared = Math.max(1e-12, dx * dx + dy * dy);
    int count = 0;
    for (int r = row0; r <= row1; r++) {
      double py = box.minY() + (r + 0.5) * CELL_MM - y0;
      for (int c = column0; c <= column1; c++) {
        int cell = r * columns + c;
        if (stock[cell] >= depth - 0.01) {
          continue;
        }
        double px = box.minX() + (c + 0.5) * CELL_MM - x0;
        double t = Math.min(1, Math.max(0, (px * dx + py * dy) / squared));
        double ex = px - t * dx;
        double ey = py - t * dy;
        if (ex * ex + ey * ey <= radius * radius) {
          stock[cell] = (float) depth;
          count++;
        }
      }
    }
    return count * CELL_MM * CELL_MM;
  }
}
