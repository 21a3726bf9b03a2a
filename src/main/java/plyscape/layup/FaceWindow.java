package plyscape.layup;

import java.util.ArrayList;
import java.util.List;

/**
 * Between which depths a face may be <em>cut</em> so that, after sanding, it keeps its ply's needed
 * clearance from both edges (contract, section 3): mm, positive down, the same point of reference
 * as the target depth. Immutable.
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

  /**
   * The windows of all plies, top to bottom. A ply that stays uncut, is unreliable or has no room
   * gets a closed window at its target; under every window {@link CutAllowance#minimumFloorMm()} of
   * wood is left as long as it is under the target.
   */
  public static List<FaceWindow> of(Depths depths, CutAllowance allowance) {
    double panelMm = depths.of(depths.plies()).bottomMm();
    List<FaceWindow> windows = new ArrayList<>();
    for (PlyDepth depth : depths) {
      windows.add(of(depth, allowance, panelMm - allowance.minimumFloorMm()));
    }
    return List.copyOf(windows);
  }

  private static FaceWindow of(PlyDepth depth, CutAllowance allowance, double floorMm) {
    double target = depth.targetMm();
    FaceWindow closed = new FaceWindow(target, target);
    if (target <= 0 || !depth.reliable()) {
      return closed;
    }
    double sanding = allowance.sandingMm();
    double upper = Math.max(0, depth.topMm() + depth.neededTopMm() - sanding);
    double lower = Math.min(depth.bottomMm() - depth.neededBottomMm() - sanding, floorMm);
    return lower - upper >= LEAST_MM ? new FaceWindow(upper, lower) : closed;
  }
}
