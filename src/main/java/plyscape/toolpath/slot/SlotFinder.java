package plyscape.toolpath.slot;

import java.util.ArrayList;
import java.util.List;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.EdgeBuckets;

/**
 * The narrow places of a pocket for a cutter: long ways on which the room for its centre is
 * narrower than about a stepover. Wider places between two such, at junctions, are part of the way.
 */
final class SlotFinder {

  /**
   * Of a lattice step: as far as this beyond the radius walls may be from the middle. Where there
   * is more room rings are seen, which take both walls in one round.
   */
  private static final double NARROW = 0.65;

  /** Of the radius: where the middle is farther off than this a way ends. */
  private static final double WIDE = 0.7;

  /** Wider places as long as this, in diameters, don't break a way. */
  private static final double BRIDGE = 2;

  /** Ways are led on into the open by this, in radii. */
  private static final double OUT = 1.5;

  /**
   * Ways of the smallest cutter that are shorter than this, in diameters, are left to the rings.
   */
  private static final double SHORT = 1.4;

  /** The same where a smaller cutter follows: it takes them sooner. */
  private static final double SHORT_BEFORE = 2;

  private final DistanceField field;
  private final double radius;
  private final double narrowMm;
  private final double leastMm;

  /**
   * For one pocket and one cutter, mm.
   *
   * @param smallest whether no smaller cutter gets there
   */
  SlotFinder(DistanceField field, double radiusMm, boolean smallest) {
    leastMm = (smallest ? SHORT : SHORT_BEFORE) * 2 * radiusMm;
    this.field = field;
    radius = radiusMm;
    narrowMm = radiusMm + NARROW * field.lattice.stepMm();
  }

  /** All of them. */
  List<SlotWay> find() {
    double most = Math.max(narrowMm, radius * (1 + WIDE));
    CentreGraph graph = new CentreLines(field, radius - SlotSections.FIT_MM, most).find();
    List<SlotWay> slots = new ArrayList<>();
    if (graph.size() == 0) {
      return slots;
    }
    EdgeBuckets walls = new EdgeBuckets(field.edges, field.lattice, radius);
    SlotSections sections = new SlotSections(field, walls, radius);
    for (int[] trail : SlotTrails.of(graph, radius)) {
      boolean closed = trail.length > 3 && trail[0] == trail[trail.length - 1];
      List<MidPoint> line = new ArrayList<>();
      for (int k = 0; k < trail.length - (closed ? 1 : 0); k++) {
        MidPoint point = graph.point(trail[k]);
        if (graph.of(trail[k]).length <= 2) {
          line.add(point);
        } else if (k == 0 || k == trail.length - 1) {
          // A junction's feet are those of several lines.
          line.add(
              new MidPoint(
                  point.x(),
                  point.y(),
                  point.clearMm(),
                  point.x(),
                  point.y(),
                  point.x(),
                  point.y()));
        }
      }
      split(line, closed, sections, slots);
    }
    return slots;
  }

  /** Divides a way where it is wide for long, and adds the parts that are long enough. */
  private void split(
      List<MidPoint> line, boolean closed, SlotSections sections, List<SlotWay> slots) {
    int n = line.size();
    int from = -1;
    int last = -1;
    double wide = 0;
    boolean whole = true;
    for (int i = 0; i < n; i++) {
      wide += i == 0 ? 0 : way(line.get(i - 1), line.get(i));
      if (line.get(i).clearMm() <= narrowMm) {
        if (from >= 0 && wide > BRIDGE * 2 * radius) {
          add(out(line, from, last), false, sections, slots);
          from = i;
          whole = false;
        }
        from = from < 0 ? i : from;
        last = i;
        wide = 0;
      }
    }
    if (from < 0) {
      return;
    }
    whole &= closed && from == 0 && last == n - 1;
    add(whole ? line : out(line, from, last), whole, sections, slots);
  }

  /** A part of a line, led on a little at both ends. */
  private List<MidPoint> out(List<MidPoint> line, int first, int last) {
    int from = first;
    int to = last;
    double so = 0;
    while (from > 0 && so < OUT * radius) {
      so += way(line.get(from - 1), line.get(from));
      from--;
    }
    so = 0;
    while (to < line.size() - 1 && so < OUT * radius) {
      so += way(line.get(to), line.get(to + 1));
      to++;
    }
    return line.subList(from, to + 1);
  }

  private static double way(MidPoint a, MidPoint b) {
    return Math.hypot(a.x() - b.x(), a.y() - b.y());
  }

  private void add(
      List<MidPoint> line, boolean closed, SlotSections sections, List<SlotWay> slots) {
    double length = 0;
    for (int i = 1; i < line.size(); i++) {
      length += way(line.get(i - 1), line.get(i));
    }
    if (length >= leastMm) {
      SlotWay slot = sections.of(line, closed);
      slot = slot != null && closed ? slot.opened() : slot;
      if (slot != null) {
        slots.add(slot);
      }
    }
  }
}
