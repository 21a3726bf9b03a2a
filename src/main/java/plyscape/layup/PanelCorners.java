package plyscape.layup;

import java.util.List;

/**
 * What holds of one ply all over a panel, wherever it may come to show, found at the panel's
 * corners: depths fall evenly over it and the squares of tolerances curve upwards, so that nowhere
 * in between is anything worse. Immutable.
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

  /** Of a ply on a panel of that size, mm. */
  public static PanelCorners of(Depths depths, int ply, double widthMm, double heightMm) {
    LeastFloor least = null;
    LeastFloor most = null;
    PlyDepth worst = null;
    PanelPoint worstAt = null;
    boolean reliable = true;
    for (PanelPoint corner :
        List.of(
            new PanelPoint(0, 0),
            new PanelPoint(widthMm, 0),
            new PanelPoint(0, heightMm),
            new PanelPoint(widthMm, heightMm))) {
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
}
