package plyscape.shop;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.layup.Layup;
import plyscape.layup.PlyDepth;
import plyscape.machine.Machine;
import plyscape.machine.Tool;
import plyscape.text.Numbers;
import plyscape.toolpath.PocketLevel;

/**
 * A stepped test cut: pads side by side, each one step deeper than the one before, in rows from the
 * lower left corner of an offcut. The pad on which a colour is first seen tells where its ply
 * begins, to within a step. Immutable.
 *
 * @param widthMm offcut, X
 * @param heightMm offcut, Y
 * @param stepMm height of a step
 * @param readingErrorMm greatest error of a reading: half a step and the machine's Z error
 * @param pads in order of depth
 * @param unseen plies whose bottom lies too deep to be cut
 */
public record Coupon(
    double widthMm,
    double heightMm,
    double stepMm,
    double readingErrorMm,
    List<Pad> pads,
    List<Integer> unseen) {

  /**
   * Margin round the pads, for clamps, and between rows, so that the top face can be seen beside
   * every pad.
   */
  static final double MARGIN_MM = 6;

  static final double ROW_GAP_MM = 3;

  /** A reading may be off by this share of the thinnest ply. */
  private static final double READING_SHARE = 0.2;

  /**
   * Depths are written to 0.001; steps are rounded down to hundredths, thin ones to thousandths.
   */
  private static final double LEAST_STEP_MM = 0.005;

  /** More pads than this are no test cut any more. */
  private static final int MOST_PADS = 2000;

  /**
   * One pad.
   *
   * @param number from 1
   * @param depthMm of its floor
   * @param box on the offcut
   */
  public record Pad(int number, double depthMm, Box box) {}

  /**
   * What the maker asks for.
   *
   * @param widthMm offcut, X
   * @param heightMm offcut, Y
   * @param stepMm height of a step, or null for what the plies want
   * @param floorMm wood to be left under the deepest pad
   */
  public record Wish(double widthMm, double heightMm, Double stepMm, double floorMm) {}

  /**
   * Lays a coupon out.
   *
   * @throws JobFault if offcut, tool or machine are too small, or the plies too thin to be told
   *     apart
   */
  public static Coupon of(
      Layup layup,
      List<PlyDepth> depths,
      Wish wish,
      Tool tool,
      Machine machine,
      Warnings warnings) {
    if (tool.shape() != Tool.Shape.FLAT) {
      throw new JobFault(
          "a coupon has flat pads, and \"" + tool.name() + "\" isn't a flat end mill",
          "choose a flat one");
    }
    double step = step(depths, wish, tool, machine);
    PlyDepth last = depths.get(depths.size() - 1);
    int count = count(depths, wish, step);
    if (count < 2) {
      throw new JobFault(
          "the panel is "
              + mm(last.bottomMm())
              + " mm thick and "
              + mm(wish.floorMm())
              + " mm are to stay under the cut",
          "a coupon needs room for two steps of " + mm(step) + " mm");
    }
    double deepest = count * step;
    if (tool.fluteLengthMm() < deepest) {
      throw new JobFault(
          "the deepest pad is "
              + mm(deepest)
              + " mm down and the flutes of \""
              + tool.name()
              + "\" are "
              + mm(tool.fluteLengthMm())
              + " mm long",
          "choose a longer tool");
    }
    requireTravel(wish, machine, deepest);
    List<Integer> unseen = new ArrayList<>();
    for (PlyDepth d : depths.subList(0, depths.size() - 1)) {
      PlyDepth below = depths.get(d.ply().number());
      if (below.topMm() + below.topToleranceMm() > deepest) {
        unseen.add(d.ply().number());
        warnings.add(
            "coupon-depth",
            "the bottom of ply "
                + d.ply().number()
                + " ("
                + d.ply().name()
                + ") may lie below the deepest pad, "
                + mm(deepest)
                + " mm; leave less wood under the cut to see it",
            "ply " + d.ply().number());
      }
    }
    List<Pad> pads = pads(count, step, wish, tool);
    return new Coupon(
        wish.widthMm(),
        wish.heightMm(),
        step,
        step / 2 + machine.zErrorMm(),
        pads,
        List.copyOf(unseen));
  }

  /** Depth of the deepest pad. */
  public double deepestMm() {
    return pads.get(pads.size() - 1).depthMm();
  }

  /** The part of the offcut that is cut, and no more. */
  public Box carved() {
    Envelope all = new Envelope();
    for (Pad pad : pads) {
      all.expandToInclude(pad.box().minX(), pad.box().minY());
      all.expandToInclude(pad.box().maxX(), pad.box().maxY());
    }
    return new Box(all.getMinX(), all.getMinY(), all.getMaxX(), all.getMaxY());
  }

  /** The pads as nested pockets, numbered as the pads are, for the path planner. */
  public List<PocketLevel> levels() {
    GeometryFactory factory = new GeometryFactory();
    List<PocketLevel> levels = new ArrayList<>();
    for (int k = 0; k < pads.size(); k++) {
      List<Polygon> pocket = new ArrayList<>();
      for (int from = k; from < pads.size(); ) {
        int to = from;
        while (to + 1 < pads.size()
            && pads.get(to + 1).box().minY() == pads.get(from).box().minY()) {
          to++;
        }
        pocket.add(rectangle(factory, pads.get(from).box(), pads.get(to).box()));
        from = to + 1;
      }
      MultiPolygon exposed =
          factory.createMultiPolygon(
              new Polygon[] {rectangle(factory, pads.get(k).box(), pads.get(k).box())});
      levels.add(
          new PocketLevel(
              pads.get(k).number(),
              pads.get(k).depthMm(),
              factory.createMultiPolygon(pocket.toArray(new Polygon[0])),
              exposed));
    }
    return levels;
  }

  private static Polygon rectangle(GeometryFactory factory, Box first, Box last) {
    return factory.createPolygon(
        new Coordinate[] {
          new Coordinate(first.minX(), first.minY()),
          new Coordinate(last.maxX(), first.minY()),
          new Coordinate(last.maxX(), first.maxY()),
          new Coordinate(first.minX(), first.maxY()),
          new Coordinate(first.minX(), first.minY())
        });
  }

  /** Pads needed to see the last boundary, or as many as the floor allows. */
  private static int count(List<PlyDepth> depths, Wish wish, double step) {
    PlyDepth last = depths.get(depths.size() - 1);
    double wanted = depths.size() == 1 ? last.midMm() : last.topMm() + last.topToleranceMm() + step;
    double allowed = last.bottomMm() - wish.floorMm();
    return Math.min((int) Math.ceil(wanted / step - 1e-9), (int) Math.floor(allowed / step + 1e-9));
  }

  /**
   * The step asked for, or the finest that fits on the offcut: steps below twice the machine's Z
   * error tell nothing more, and a whole step is never more than the share of the thinnest ply.
   */
  private static double step(List<PlyDepth> depths, Wish wish, Tool tool, Machine machine) {
    PlyDepth thinnest = depths.get(0);
    for (PlyDepth d : depths) {
      thinnest = d.availableMm() < thinnest.availableMm() ? d : thinnest;
    }
    double share = READING_SHARE * 2 * thinnest.availableMm();
    // A whole step within the share, and half a step with the machine's own error too.
    double most = Math.min(share, 2 * (share - machine.zErrorMm()));
    double unit = most >= 0.02 ? 0.01 : 0.001;
    double coarsest = Math.floor(most / unit + 1e-9) * unit;
    double step =
        wish.stepMm() == null ? finest(depths, wish, tool, machine, coarsest, unit) : wish.stepMm();
    if (most < LEAST_STEP_MM || step < LEAST_STEP_MM) {
      throw new JobFault(
          "ply "
              + thinnest.ply().number()
              + " ("
              + thinnest.ply().name()
              + ") is "
              + mm(2 * thinnest.availableMm())
              + " mm thick and Z is off by up to "
              + mm(machine.zErrorMm())
              + " mm: a reading to a fifth of it is out of reach",
          "a machine with a smaller z_error would do");
    }
    if (step > most + 1e-9) {
      throw new JobFault(
          "steps of "
              + mm(step)
              + " mm don't tell a fifth of the thinnest ply, "
              + mm(2 * thinnest.availableMm())
              + " mm",
          "steps of " + mm(coarsest) + " mm or less would do");
    }
    return step;
  }

  private static double finest(
      List<PlyDepth> depths, Wish wish, Tool tool, Machine machine, double coarsest, double unit) {
    int room = columns(wish, tool) * rows(wish, tool);
    long first = Math.max(1, (long) Math.ceil(2 * machine.zErrorMm() / unit - 1e-9));
    for (long units = first; units * unit < coarsest - 1e-9; units++) {
      if (count(depths, wish, units * unit) <= room) {
        return units * unit;
      }
    }
    return coarsest;
  }

  private static double padLength(Tool tool) {
    return Math.max(4, Math.ceil(1.5 * tool.diameterMm()));
  }

  private static double padWidth(Tool tool) {
    return Math.max(8, Math.ceil(2.5 * tool.diameterMm()));
  }

  private static int columns(Wish wish, Tool tool) {
    return (int) Math.max(0, Math.floor((wish.widthMm() - 2 * MARGIN_MM) / padLength(tool) + 1e-9));
  }

  private static int rows(Wish wish, Tool tool) {
    double pitch = padWidth(tool) + ROW_GAP_MM;
    return (int)
        Math.max(0, Math.floor((wish.heightMm() - 2 * MARGIN_MM + ROW_GAP_MM) / pitch + 1e-9));
  }

  private static void requireTravel(Wish wish, Machine machine, double deepest) {
    double z = machine.safeHeightMm() + deepest;
    if (wish.widthMm() > machine.travelXMm()
        || wish.heightMm() > machine.travelYMm()
        || z > machine.travelZMm()) {
      throw new JobFault(
          "a coupon of "
              + mm(wish.widthMm())
              + " x "
              + mm(wish.heightMm())
              + " mm with "
              + mm(z)
              + " mm of Z is more than the machine's travel of "
              + mm(machine.travelXMm())
              + " x "
              + mm(machine.travelYMm())
              + " x "
              + mm(machine.travelZMm())
              + " mm",
          "choose a smaller --size");
    }
  }

  private static List<Pad> pads(int count, double step, Wish wish, Tool tool) {
    double length = padLength(tool);
    double width = padWidth(tool);
    int columns = columns(wish, tool);
    int rows = columns < 1 ? 0 : (count + columns - 1) / columns;
    double height = 2 * MARGIN_MM + rows * width + (rows - 1) * ROW_GAP_MM;
    if (count > MOST_PADS || rows < 1 || height > wish.heightMm()) {
      throw new JobFault(
          count
              + " pads of "
              + mm(length)
              + " x "
              + mm(width)
              + " mm don't fit on an offcut of "
              + mm(wish.widthMm())
              + " x "
              + mm(wish.heightMm())
              + " mm",
          rows < 1 || count > MOST_PADS
              ? "take a larger offcut or a thinner tool"
              : "--size "
                  + mm(wish.widthMm())
                  + "x"
                  + mm(Math.ceil(height))
                  + " would do, or a thinner tool");
    }
    List<Pad> pads = new ArrayList<>();
    for (int k = 0; k < count; k++) {
      int row = k / columns;
      double x = MARGIN_MM + k % columns * length;
      double y = MARGIN_MM + row * (width + ROW_GAP_MM);
      double depth = Math.round((k + 1) * step * 1000) / 1000.0;
      pads.add(new Pad(k + 1, depth, new Box(x, y, x + length, y + width)));
    }
    return List.copyOf(pads);
  }

  private static String mm(double value) {
    return Numbers.trimmed(value, 3);
  }
}
