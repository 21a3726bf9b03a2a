package plyscape.layup;

import java.util.ArrayList;
import java.util.List;

/**
 * What holds of one ply all over a panel, wherever it may come to show, found at the panel's
 * corners: depths fall evenly over it and the squares of tolerances curve upwards, so that nowhere
 * in between is anything worse. Where the press may have bowed it, on a lattice of 13 x 13 places.
 * Immutable.
 *
 * @param leastFloor where a cut into the ply leaves least wood
 * @param mostFloor where it leaves most
 * @param neededWorstMm greatest clearance needed at an edge
 * @param worstAt where that is
 * @param reliable whether the clearance is enough everywhere
 */
public record PanelCorners(
    LeastFloor leastFloor,
    LeastFloor mostFloor,
    double neededWorstMm,
    PanelPoint worstAt,
    boolean reliable) {

  private static final int CURVED_STEPS = 12;

  /** Of a ply on a panel of that size, mm. */
  public static PanelCorners of(Depths depths, int ply, double widthMm, double heightMm) {
    LeastFloor least = null;
    LeastFloor most = null;
    PlyDepth worst = null;
    PanelPoint worstAt = null;
    boolean reliable = true;
    for (PanelPoint corner : places(depths, widthMm, heightMm)) {
      PlyDepth at = depths.of(ply, corner);
      double floor = depths.thicknessMm(corner) - at.targetMm();
      LeastFloor here = new LeastFloor(floor, corner, at.targetMm());
      least = least == null || floor < least.floorMm() ? here : least;
      most = most == null || floor > most.floorMm() ? here : most;
      if (worst == null || at.neededMm() > worst.neededMm()) {
        worst = at;
        worstAt = corner;
      }
      reliable &= at.reliableHere();
    }
    return new PanelCorners(least, most, worst.neededMm(), worstAt, reliable);
  }

  /** The corners; for depths that curve a lattice of places with them. */
  public static List<PanelPoint> places(Depths depths, double widthMm, double heightMm) {
    int steps = depths.bows() ? CURVED_STEPS : 1;
    List<PanelPoint> out = new ArrayList<>();
    for (int j = 0; j <= steps; j++) {
      for (int i = 0; i <= steps; i++) {
        out.add(new PanelPoint(widthMm * i / steps, heightMm * j / steps));
      }
    }
    return out;
  }
}
