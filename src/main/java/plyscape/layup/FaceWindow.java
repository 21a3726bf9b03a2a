package plyscape.layup;

import java.util.ArrayList;
import java.util.List;
import plyscape.text.Numbers;

/**
 * Between which depths a face may be <em>cut</em> so that, after sanding, it keeps its ply's needed
 * clearance from both edges (src/contract.md, section 3): mm, positive down, the same point of
 * reference as the target depth. Where needs differ from place to place the greatest counts.
 * Immutable.
 *
 * @param upperMm shallowest cut
 * @param lowerMm deepest cut; the same for a ply that has no room, which stays at its target depth
 */
public record FaceWindow(double upperMm, double lowerMm) {

  /** A window thinner than this isn't worth a second run: a ply barely reliable stays flat. */
  private static final double LEAST_MM = 0.005;

  /** Checks the order. */
  public FaceWindow {
    if (!(upperMm >= 0 && lowerMm >= upperMm)) {
      throw new IllegalArgumentException("no window: " + upperMm + " to " + lowerMm);
    }
  }

  /** Whether faces can move in it at all. */
  public boolean open() {
    return lowerMm > upperMm;
  }

  /** Height, mm. */
  public double heightMm() {
    return lowerMm - upperMm;
  }

  /** Such as {@code cut 1.290} or {@code cut 0.947 to 1.626}, or {@code left uncut}. */
  public String cutText() {
    if (lowerMm <= 0) {
      return "left uncut";
    }
    String text = "cut " + Numbers.fixed(upperMm, 3);
    return open() ? text + " to " + Numbers.fixed(lowerMm, 3) : text;
  }

  /**
   * The windows of all plies, top to bottom. A ply that stays uncut, is unreliable or has no room
   * gets a closed window at its target; under every window {@link CutAllowance#minimumFloorMm()} of
   * wood is left, where the panel is thinnest, as long as it is under the target.
   */
  public static List<FaceWindow> of(Depths depths, CutAllowance allowance) {
    double panelMm = depths.of(depths.plies()).bottomMm();
    List<FaceWindow> windows = new ArrayList<>();
    for (PlyDepth depth : depths) {
      double elsewhere =
          depths.byPlace() && depth.shown() != null ? depth.shown().neededWorstMm() : 0;
      double thinner =
          depths.byPlace() && depth.shown() != null
              ? depths.floorMm(depth.ply().number()) - depth.shown().floor().floorMm()
              : 0;
      double floor = panelMm - allowance.minimumFloorMm() - Math.max(0, thinner);
      windows.add(of(depth, allowance, elsewhere, floor));
    }
    return List.copyOf(windows);
  }

  private static FaceWindow of(
      PlyDepth depth, CutAllowance allowance, double leastMm, double floorMm) {
    double target = depth.targetMm();
    FaceWindow closed = new FaceWindow(target, target);
    if (target <= 0 || !depth.reliableHere() || depth.availableMm() < leastMm) {
      return closed;
    }
    double sanding = allowance.sandingMm();
    double upper = Math.max(0, depth.topMm() + Math.max(leastMm, depth.neededTopMm()) - sanding);
    double lower =
        Math.min(depth.bottomMm() - Math.max(leastMm, depth.neededBottomMm()) - sanding, floorMm);
    return lower - upper >= LEAST_MM ? new FaceWindow(upper, lower) : closed;
  }
}
