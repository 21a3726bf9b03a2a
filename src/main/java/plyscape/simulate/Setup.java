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
 */
public record Setup(
    Box panel,
    double thicknessMm,
    double throughMm,
    double flatnessMm,
    Box carved,
    Machine machine,
    double cellMm) {

  /** A panel that nothing is to cut through. */
  public Setup(
      Box panel,
      double thicknessMm,
      double flatnessMm,
      Box carved,
      Machine machine,
      double cellMm) {
    this(panel, thicknessMm, 0, flatnessMm, carved, machine, cellMm);
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
    this(panel, thicknessMm, 0, 0, carved, machine, cellMm);
  }
}
