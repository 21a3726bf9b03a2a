package plyscape.gcode;

import plyscape.machine.Machine;

/**
 * Turns panel coordinates into a program's and back. The only place where depth (positive down)
 * becomes Z (positive up). Immutable; exact but for one rounding of a double.
 *
 * @param zeroX panel X of the program's X0, mm
 * @param zeroY panel Y of the program's Y0, mm
 * @param zeroDepth depth below the panel's top face of the program's Z0, mm
 */
public record ProgramFrame(double zeroX, double zeroY, double zeroDepth) {

  /** The frame that a machine's {@code zero} and {@code zero_z} give on a panel of this size. */
  public static ProgramFrame of(
      Machine machine, double widthMm, double heightMm, double thicknessMm) {
    double x =
        switch (machine.zero()) {
          case LOWER_LEFT, UPPER_LEFT -> 0;
          case LOWER_RIGHT, UPPER_RIGHT -> widthMm;
          case CENTRE -> widthMm / 2;
        };
    double y =
        switch (machine.zero()) {
          case LOWER_LEFT, LOWER_RIGHT -> 0;
          case UPPER_LEFT, UPPER_RIGHT -> heightMm;
          case CENTRE -> heightMm / 2;
        };
    return new ProgramFrame(x, y, machine.zeroZ() == Machine.ZeroZ.TOP ? 0 : thicknessMm);
  }

  /** Program X of a panel X. */
  public double programX(double panelX) {
    return panelX - zeroX;
  }

  /** Program Y of a panel Y. */
  public double programY(double panelY) {
    return panelY - zeroY;
  }

  /** Program Z of a depth. */
  public double programZ(double depth) {
    return zeroDepth - depth;
  }

  /** Panel X of a program X. */
  public double panelX(double programX) {
    return programX + zeroX;
  }

  /** Panel Y of a program Y. */
  public double panelY(double programY) {
    return programY + zeroY;
  }

  /** Depth of a program Z. */
  public double depth(double programZ) {
    return zeroDepth - programZ;
  }
}
