package plyscape.toolpath.cutout;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import plyscape.machine.Machine;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.toolpath.task.Pass;

/**
 * Cuts a piece free outside its line, round by round: down along the round itself, then once around
 * at that depth, over the tabs where there are some.
 */
public final class OutlineCut {

  private static final double TOUCH_MM = 0.2;

  /** Ramps come out a little flatter than allowed, as depths are rounded to 0.001 mm. */
  private static final double FLATTER = 0.98;

  private final Polygon piece;
  private final OutlineForm form;
  private final Tool tool;
  private final Machine machine;
  private final OutlinePath path;
  private final List<Double> tabs;

  /**
   * Lays out path and tabs.
   *
   * @param piece that comes free, panel mm
   * @throws plyscape.fault.JobFault if the tabs don't fit
   */
  public OutlineCut(Polygon piece, OutlineForm form, Tool tool, Machine machine) {
    this.piece = piece;
    this.form = form;
    this.tool = tool;
    this.machine = machine;
    // Outside a piece a cutter that turns clockwise climbs when it goes clockwise.
    path = OutlinePath.around(piece, form.allowanceMm() + tool.radiusMm(), machine.climb());
    tabs = form.tabs() == 0 ? List.of() : TabSpots.of(path, form.tabs(), spanMm());
  }

  private double spanMm() {
    return form.tabWidthMm() + tool.diameterMm();
  }

  /** The passes, one a round. */
  public List<Pass> passes(int plyNumber) {
    int rounds = (int) Math.ceil(form.depthMm() / stepMm() - 1e-9);
    List<Pass> out = new ArrayList<>();
    double along = 0;
    double from = 0;
    for (int k = 1; k <= rounds; k++) {
      double to = form.depthMm() * k / rounds;
      List<Move> moves = new ArrayList<>();
      if (k == 1) {
        moves.add(Move.rapid(path.x()[0], path.y()[0], -machine.safeHeightMm()));
        moves.add(Move.rapid(path.x()[0], path.y()[0], -TOUCH_MM));
        moves.add(Move.line(path.x()[0], path.y()[0], 0, tool.plungeMmPerMin()));
      }
      double ramp = (to - from) / slope();
      round(along, ramp, from, to, moves);
      along += ramp;
      if (k == rounds) {
        Move last = moves.get(moves.size() - 1);
        moves.add(Move.rapid(last.x(), last.y(), -machine.safeHeightMm()));
      }
      out.add(new Pass(plyNumber, to, from, moves, Pass.Kind.OUTLINE));
      from = to;
    }
    return out;
  }

  private double slope() {
    return FLATTER * Math.tan(Math.toRadians(machine.rampDegrees()));
  }

  /** In a full-width cut the chip is kept by cutting shallower rather than slower. */
  private double stepMm() {
    double wanted = machine.slotFeed() * tool.feedMmPerMin();
    return tool.stepdownMm() * Math.min(1, wanted / feed());
  }

  private double feed() {
    double wanted = machine.slotFeed() * tool.feedMmPerMin();
    double least = machine.leastChipMm() * tool.flutes() * tool.rpm();
    return Math.min(tool.feedMmPerMin(), Math.max(wanted, least));
  }

  /** Down the ramp from a length along the path, and once around from its end. */
  private void round(double start, double ramp, double from, double to, List<Move> moves) {
    double end = start + ramp + path.lengthMm();
    double down = Math.min(feed(), tool.plungeMmPerMin() * Math.hypot(1, slope()) / slope());
    double before = start;
    boolean lifted = over(start + 1e-6);
    for (double next : stops(start, ramp, end)) {
      double depth = depth(next, start, ramp, from, to);
      boolean on = over((before + next) / 2);
      if (on != lifted) {
        step(before, on, depth(before, start, ramp, from, to), moves);
        lifted = on;
      }
      double[] p = path.point(next);
      moves.add(
          Move.line(
              p[0],
              p[1],
              on ? Math.min(depth, form.tabTopMm()) : depth,
              next <= start + ramp + 1e-9 ? down : feed()));
      before = next;
    }
  }

  /** Up onto a tab, or down behind it. */
  private void step(double along, boolean up, double depth, List<Move> moves) {
    if (depth <= form.tabTopMm()) {
      return;
    }
    double[] p = path.point(along);
    moves.add(Move.line(p[0], p[1], up ? form.tabTopMm() : depth, tool.plungeMmPerMin()));
  }

  private static double depth(double along, double start, double ramp, double from, double to) {
    return along >= start + ramp ? to : from + (to - from) * (along - start) / ramp;
  }

  private boolean over(double along) {
    double place = path.within(along);
    return tabs.stream().anyMatch(tab -> Math.abs(place - tab) < spanMm() / 2);
  }

  /** Lengths at which a move ends: corners, ends of tabs, the ramp's end, the end. */
  private NavigableSet<Double> stops(double start, double ramp, double end) {
    NavigableSet<Double> out = new TreeSet<>(List.of(start + ramp, end));
    double length = path.lengthMm();
    for (int k = (int) Math.floor(start / length); k * length < end; k++) {
      for (double corner : path.at()) {
        out.add(k * length + corner);
      }
      for (double tab : tabs) {
        out.add(k * length + tab - spanMm() / 2);
        out.add(k * length + tab + spanMm() / 2);
      }
    }
    return new TreeSet<>(out.subSet(start + 1e-6, true, end, true));
  }

  /** What the cut takes: between the line with its allowance and the cutter's far side, mm. */
  public Geometry kerf() {
    Polygon filled = piece.getFactory().createPolygon(piece.getExteriorRing());
    int quadrant = 32;
    return filled
        .buffer(form.allowanceMm() + tool.diameterMm(), quadrant)
        .difference(filled.buffer(form.allowanceMm(), quadrant));
  }

  /** Where of the kerf wood stands at tabs, and beside them where the cutter goes up and down. */
  public Geometry atTabs() {
    Geometry out = piece.getFactory().createPolygon();
    for (double tab : tabs) {
      double[] p = path.point(tab);
      out =
          out.union(
              piece
                  .getFactory()
                  .createPoint(new Coordinate(p[0], p[1]))
                  .buffer(spanMm() / 2 + tool.radiusMm(), 16));
    }
    return out.intersection(kerf());
  }
}
