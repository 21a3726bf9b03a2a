package plyscape.cli.shop;

import java.util.ArrayList;
import java.util.List;
import plyscape.fault.VerifyFault;
import plyscape.grid.Box;
import plyscape.machine.Machine;
import plyscape.machine.Tool;
import plyscape.shop.Coupon;
import plyscape.shop.CouponPlaces;
import plyscape.shop.CouponProgram;
import plyscape.simulate.Cut;
import plyscape.simulate.Setup;
import plyscape.simulate.Simulator;
import plyscape.simulate.Target;
import plyscape.simulate.Verification;
import plyscape.text.Template;

/** A coupon's program cut in simulation, as {@code plan} cuts those of a panel. */
final class CouponProof {

  /** Cell of the simulation; pads are several mm wide. */
  private static final double CELL_MM = 0.1;

  private CouponProof() {}

  /**
   * Cuts it.
   *
   * @throws VerifyFault if it would spoil the coupon
   */
  static Verification of(
      CouponPlaces places, CouponProgram program, double thicknessMm, Tool tool, Machine machine) {
    List<Target> targets = new ArrayList<>();
    for (Coupon.Pad pad : places.coupon().pads()) {
      double[][] rings =
          places.shifts().stream().map(by -> ring(pad.box(), by)).toArray(double[][]::new);
      targets.add(new Target(pad.number(), pad.depthMm(), rings));
    }
    Setup setup = new Setup(places.wood(), thicknessMm, places.carved(), machine, CELL_MM);
    Verification v =
        Simulator.run(setup, List.of(new Cut(program.parsed(), tool)), targets, List.of(tool))
            .verification();
    if (!v.safe()) {
      String first =
          v.gougedMm2() > 0
              ? "it gouges"
              : v.collisions().isEmpty() ? "it bites too deep" : collision(v.collisions());
      throw new VerifyFault(
          "the coupon's G-code failed its simulation and was not written: " + first,
          "check the machine's travel and the tool; if those are right, please report it with the"
              + " layup");
    }
    return v;
  }

  private static double[] ring(Box b, double[] by) {
    double west = b.minX() + by[0];
    double east = b.maxX() + by[0];
    double south = b.minY() + by[1];
    double north = b.maxY() + by[1];
    return new double[] {west, south, east, south, east, north, west, north};
  }

  private static String collision(List<Verification.Collision> collisions) {
    Verification.Collision c = collisions.get(0);
    return Template.fill(
        "%s collisions, the first in line %s at X%.2f Y%.2f: %s",
        collisions.size(), c.line(), c.x(), c.y(), c.what());
  }
}
