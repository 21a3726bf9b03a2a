package plyscape.layup;

import plyscape.layup.statistics.SeededNormals;

/** A panel drawn at random, which can be measured: the truth that estimates are held against. */
public final class MadePanel {

  private final LayerStack stack;
  private final double[] error;
  private final double press;
  private final double taperX;
  private final double taperY;
  private final double bow;
  private final SeededNormals normals;

  /**
   * Draws one.
   *
   * @param taper plus or minus (3 sigma) on each of the two tapers, a share per 100 mm
   * @param bow the same for a thinner middle, a share per (100 mm)^2
   */
  public MadePanel(Layup layup, double taper, double bow, SeededNormals normals) {
    this.normals = normals;
    stack = LayerStack.of(layup);
    press = -0.04 + 0.08 * normals.uniform();
    taperX = normals.next() * taper / 3;
    taperY = normals.next() * taper / 3;
    this.bow = normals.next() * bow / 3;
    error = new double[stack.layers()];
    for (int j = 0; j < error.length; j++) {
      error[j] = normals.next() * stack.toleranceMm(j) / 3;
    }
  }

  /** True depth of an interface at a place of a panel of 240 x 240 mm. */
  public double depthMm(int interfaceIndex, double xMm, double yMm) {
    double x = (xMm - 120) / 100;
    double y = (yMm - 120) / 100;
    double share = press + taperX * x + taperY * y + bow * (x * x + y * y);
    double depth = stack.totalMm(0, interfaceIndex) * (1 + share);
    for (int j = 0; j < interfaceIndex; j++) {
      depth += error[j];
    }
    return depth;
  }

  /** The same as read with an error of its own. */
  public double read(int interfaceIndex, double xMm, double yMm, double toleranceMm) {
    return depthMm(interfaceIndex, xMm, yMm) + normals.next() * toleranceMm / 3;
  }
}
