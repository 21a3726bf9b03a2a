package plyscape.layup;

import plyscape.layup.MeasuredDepths.Known;

/**
 * Depth and tolerance of every interface of the pressed panel (section 3 of the contract), mm,
 * measured depths taken into account. Interfaces are those of {@link LayerStack}.
 *
 * <p>Between two known depths layers are scaled to fit, glue lines included; below the last known
 * one they keep their nominal thickness. Tolerances are never scaled.
 */
final class PressedDepths {

  private final LayerStack stack;
  private final MeasuredDepths measured;
  private final double[] depthMm;

  /**
   * Works the depths out.
   *
   * @throws plyscape.fault.InputFault if measured depths are out of order
   */
  PressedDepths(Layup layup) {
    stack = LayerStack.of(layup);
    measured = MeasuredDepths.of(layup);
    depthMm = new double[stack.layers() + 1];
    for (int i = 1; i < depthMm.length; i++) {
      Known above = measured.above(i);
      Known below = measured.below(i);
      double nominal = stack.totalMm(above.interfaceIndex(), i);
      double factor = below == null ? 1 : factor(above, below);
      depthMm[i] = above.depthMm() + nominal * factor;
    }
  }

  /** The nominal stack. */
  LayerStack stack() {
    return stack;
  }

  /** The known depths. */
  MeasuredDepths measured() {
    return measured;
  }

  /** Depth of an interface. */
  double depthMm(int interfaceIndex) {
    return depthMm[interfaceIndex];
  }

  /** Thickness in the pressed panel of the layer below an interface. */
  double thicknessMm(int layer) {
    return depthMm[layer + 1] - depthMm[layer];
  }

  /** Measured over nominal thickness of the stretch between two known depths. */
  double factor(Known above, Known below) {
    return (below.depthMm() - above.depthMm())
        / stack.totalMm(above.interfaceIndex(), below.interfaceIndex());
  }

  /**
   * Plus or minus on the depth of an interface. A measured depth has its measuring tolerance.
   * Between two known depths the tolerance is that of the nearer way around, plus the larger of the
   * two measuring tolerances; {@code sqrt(AB / (A + B))} is the deviation of a sum of normal errors
   * once the whole sum is known. Below the last known depth tolerances add up from there.
   */
  double toleranceMm(int interfaceIndex, Method method) {
    Known above = measured.above(interfaceIndex);
    if (above.interfaceIndex() == interfaceIndex) {
      return above.toleranceMm();
    }
    Known below = measured.below(interfaceIndex);
    double measuring =
        below == null ? above.toleranceMm() : Math.max(above.toleranceMm(), below.toleranceMm());
    int from = above.interfaceIndex();
    if (method == Method.WORST) {
      double sum = stack.toleranceSumMm(from, interfaceIndex);
      return measuring
          + (below == null
              ? sum
              : Math.min(sum, stack.toleranceSumMm(interfaceIndex, below.interfaceIndex())));
    }
    double squares = stack.toleranceSquaresMm2(from, interfaceIndex);
    if (below != null) {
      double other = stack.toleranceSquaresMm2(interfaceIndex, below.interfaceIndex());
      squares = squares + other > 0 ? squares * other / (squares + other) : 0;
    }
    return Math.sqrt(squares + measuring * measuring);
  }
}
