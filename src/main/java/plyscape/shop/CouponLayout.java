package plyscape.shop;

import java.util.ArrayList;
import java.util.List;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.layup.Depths;
import plyscape.layup.PlyDepth;
import plyscape.machine.Machine;
import plyscape.machine.Tool;
import plyscape.text.Numbers;
import plyscape.text.Template;

/**
 * Lays a coupon out: as fine a step as the offcut has room for and the machine can hold, and as
 * many pads as it takes to see the last boundary.
 */
final class CouponLayout {

  /**
   * Margin round the pads, for clamps, and between rows, so that the top face can be seen beside
   * every pad.
   */
  private static final double MARGIN_MM = 6;

  private static final double ROW_GAP_MM = 3;

  /** A reading may be off by this share of the thinnest ply. */
  private static final double READING_SHARE = 0.2;

  /**
   * Depths are written to 0.001; steps are rounded down to hundredths, thin ones to thousandths.
   */
  private static final double LEAST_STEP_MM = 0.005;

  /** More pads than this are no test cut any more. */
  private static final int MOST_PADS = 2000;

  private final Depths depths;
  private final Coupon.Wish wish;
  private final Tool tool;
  private final Machine machine;

  CouponLayout(Depths depths, Coupon.Wish wish, Tool tool, Machine machine) {
    this.depths = depths;
    this.wish = wish;
    this.tool = tool;
    this.machine = machine;
  }

  /**
   * The coupon; what can't be seen on it is warned of.
   *
   * @throws JobFault if offcut, tool or machine are too small, or the plies too thin to be
   *     distinguished
   */
  Coupon coupon(Warnings warnings) {
    if (tool.shape() != Tool.Shape.FLAT) {
      throw new JobFault(
          "a coupon has flat pads, and \"" + tool.name() + "\" isn't a flat end mill",
          "choose a flat one");
    }
    double step = step();
    int count = count(step);
    if (count < 2) {
      throw new JobFault(
          Template.fill(
              "the panel is %s mm thick and %s mm are to stay under the cut",
              mm(depths.bottom().bottomMm()), mm(wish.floorMm())),
          "a coupon needs room for two steps of " + mm(step) + " mm");
    }
    double deepest = count * step;
    requireFlutes(deepest);
    requireTravel(deepest);
    List<Integer> unseen = unseen(deepest, warnings);
    return new Coupon(
        wish.widthMm(),
        wish.heightMm(),
        step,
        step / 2 + machine.zErrorMm(),
        pads(count, step),
        unseen);
  }

  private void requireFlutes(double deepest) {
    if (tool.fluteLengthMm() < deepest) {
      throw new JobFault(
          Template.fill(
              "the deepest pad is %s mm down and the flutes of \"%s\" are %s mm long",
              mm(deepest), tool.name(), mm(tool.fluteLengthMm())),
          "choose a longer tool");
    }
  }

  /** Plies whose bottom may lie below the deepest pad. */
  private List<Integer> unseen(double deepest, Warnings warnings) {
    List<Integer> unseen = new ArrayList<>();
    for (PlyDepth d : depths.allButBottom()) {
      PlyDepth below = depths.of(d.ply().number() + 1);
      if (below.topMm() + below.topToleranceMm() > deepest) {
        unseen.add(d.ply().number());
        warnings.add(
            "coupon-depth",
            Template.fill(
                "the bottom of ply %s (%s) may lie below the deepest pad, %s mm; leave less wood"
                    + " under the cut to see it",
                d.ply().number(), d.ply().name(), mm(deepest)),
            "ply " + d.ply().number());
      }
    }
    return List.copyOf(unseen);
  }

  /** Pads needed to see the last boundary, or as many as the floor allows. */
  private int count(double step) {
    PlyDepth last = depths.bottom();
    double wanted =
        depths.plies() == 1 ? last.midMm() : last.topMm() + last.topToleranceMm() + step;
    double allowed = last.bottomMm() - wish.floorMm();
    return Math.min((int) Math.ceil(wanted / step - 1e-9), (int) Math.floor(allowed / step + 1e-9));
  }

  /**
   * The step asked for, or the finest that fits on the offcut: steps below twice the machine's Z
   * error tell nothing more, and a whole step is never more than the share of the thinnest ply.
   */
  private double step() {
    PlyDepth thinnest = depths.top();
    for (PlyDepth d : depths) {
      thinnest = d.availableMm() < thinnest.availableMm() ? d : thinnest;
    }
    double share = READING_SHARE * 2 * thinnest.availableMm();
    // A whole step within the share, and half a step with the machine's own error too.
    double most = Math.min(share, 2 * (share - machine.zErrorMm()));
    double unit = most >= 0.02 ? 0.01 : 0.001;
    double coarsest = Math.floor(most / unit + 1e-9) * unit;
    double step = wish.stepMm() == null ? finest(coarsest, unit) : wish.stepMm();
    if (most < LEAST_STEP_MM || step < LEAST_STEP_MM) {
      throw new JobFault(
          Template.fill(
              "ply %s (%s) is %s mm thick and Z is off by up to %s mm: a reading to a fifth of it"
                  + " is out of reach",
              thinnest.ply().number(),
              thinnest.ply().name(),
              mm(2 * thinnest.availableMm()),
              mm(machine.zErrorMm())),
          "a machine with a smaller z_error would do");
    }
    if (step > most + 1e-9) {
      throw new JobFault(
          Template.fill(
              "steps of %s mm don't tell a fifth of the thinnest ply, %s mm",
              mm(step), mm(2 * thinnest.availableMm())),
          "steps of " + mm(coarsest) + " mm or less would do");
    }
    return step;
  }

  private double finest(double coarsest, double unit) {
    int room = columns() * rows();
    long first = Math.max(1, (long) Math.ceil(2 * machine.zErrorMm() / unit - 1e-9));
    for (long units = first; units * unit < coarsest - 1e-9; units++) {
      if (count(units * unit) <= room) {
        return units * unit;
      }
    }
    return coarsest;
  }

  private double padLength() {
    return Math.max(4, Math.ceil(1.5 * tool.diameterMm()));
  }

  private double padWidth() {
    return Math.max(8, Math.ceil(2.5 * tool.diameterMm()));
  }

  private int columns() {
    return (int) Math.max(0, Math.floor((wish.widthMm() - 2 * MARGIN_MM) / padLength() + 1e-9));
  }

  private int rows() {
    double pitch = padWidth() + ROW_GAP_MM;
    return (int)
        Math.max(0, Math.floor((wish.heightMm() - 2 * MARGIN_MM + ROW_GAP_MM) / pitch + 1e-9));
  }

  private void requireTravel(double deepest) {
    double z = machine.safeHeightMm() + deepest;
    if (wish.widthMm() > machine.travelXMm()
        || wish.heightMm() > machine.travelYMm()
        || z > machine.travelZMm()) {
      throw new JobFault(
          Template.fill(
              "a coupon of %s x %s mm with %s mm of Z is more than the machine's travel of %s x %s"
                  + " x %s mm",
              mm(wish.widthMm()),
              mm(wish.heightMm()),
              mm(z),
              mm(machine.travelXMm()),
              mm(machine.travelYMm()),
              mm(machine.travelZMm())),
          "choose a smaller --size");
    }
  }

  private List<Coupon.Pad> pads(int count, double step) {
    double length = padLength();
    double width = padWidth();
    int columns = columns();
    int rows = columns < 1 ? 0 : (count + columns - 1) / columns;
    double height = 2 * MARGIN_MM + rows * width + (rows - 1) * ROW_GAP_MM;
    if (count > MOST_PADS || rows < 1 || height > wish.heightMm()) {
      throw new JobFault(
          Template.fill(
              "%s pads of %s x %s mm don't fit on an offcut of %s x %s mm",
              count, mm(length), mm(width), mm(wish.widthMm()), mm(wish.heightMm())),
          rows < 1 || count > MOST_PADS
              ? "take a larger offcut or a thinner tool"
              : Template.fill(
                  "--size %sx%s would do, or a thinner tool",
                  mm(wish.widthMm()), mm(Math.ceil(height))));
    }
    List<Coupon.Pad> pads = new ArrayList<>();
    for (int k = 0; k < count; k++) {
      int row = k / columns;
      double x = MARGIN_MM + k % columns * length;
      double y = MARGIN_MM + row * (width + ROW_GAP_MM);
      double depth = Math.round((k + 1) * step * 1000) / 1000.0;
      pads.add(new Coupon.Pad(k + 1, depth, new Box(x, y, x + length, y + width)));
    }
    return List.copyOf(pads);
  }

  private static String mm(double value) {
    return Numbers.trimmed(value, 3);
  }
}
