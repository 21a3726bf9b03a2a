package plyscape.simulate;

import plyscape.grid.Box;
import plyscape.machine.Machine;

/**
 * The panel on its machine. Immutable.
 *
 * @param panel the whole panel, mm
 * @param thicknessMm of the panel
 * @param throughMm how far below its bottom an outline may be cut, 0 without one
 * @param flatnessMm plus or minus, of its top face: rapids over uncut wood keep off by so much
 * @param carved the carved area, over which the matched share is counted
 * @param machine for travel and zero
 * @param cellMm side of a simulation cell, at most
 * @param bent how it lies and where its plies are; null for one that is flat and the same
 *     everywhere
 */
public record Setup(
    Box panel,
    double thicknessMm,
    double throughMm,
    double flatnessMm,
    Box carved,
    Machine machine,
    double cellMm,
    BentPanel bent) {

  /** A panel that is flat and everywhere the same. */
  public Setup(
      Box panel,
      double thicknessMm,
      double throughMm,
      double flatnessMm,
      Box carved,
      Machine machine,
      double cellMm) {
    this(panel, thicknessMm, throughMm, flatnessMm, carved, machine, cellMm, null);
  }

  /** The same panel as it lies. */
  public Setup lying(BentPanel other) {
    return new Setup(panel, thicknessMm, throughMm, flatnessMm, carved, machine, cellMm, other);
  }

  /** How far the highest place of its top face stands over that of a flat panel, mm. */
  double risesMm() {
    return bent == null ? 0 : bent.risesMm();
  }

  /**
   * Depth of the uncut top face at a place, mm; negative where it stands higher than a flat one.
   */
  double faceMm(double x, double y) {
    return bent == null ? 0 : bent.faceMm(x, y);
  }

  /** Depth of the panel's bottom below its top face at a place, mm. */
  double bottomMm(double x, double y) {
    return bent == null || bent.bottom() == null ? thicknessMm : bent.bottom().depthMm(x, y);
  }

  /** Checks sizes. */
  public Setup {
    if (!(thicknessMm > 0) || !(cellMm > 0) || !(flatnessMm >= 0) || !(throughMm >= 0)) {
      throw new IllegalArgumentException(
          "thickness and cell must be positive: " + thicknessMm + ", " + cellMm);
    }
  }

  /** A panel whose top face is flat. */
  public Setup(Box panel, double thicknessMm, Box carved, Machine machine, double cellMm) {
    this(panel, thicknessMm, 0, 0, carved, machine, cellMm, null);
  }
}
