package plyscape.simulate;

import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import plyscape.grid.CellFrame;

/**
 * The surface cut into a bent panel as the flat plan would have it, which is what targets are given
 * for.
 *
 * <p>A cutter's flat end is level while the face under it slopes, so a floor lies off its bent
 * depth by up to the slope over the cutter's radius; within that a cell counts as being at its
 * floor, and farther off by what is over it.
 */
final class FlattenedField {

  private final BentPanel bent;
  private final List<Target> cutouts;
  private final double[] floors;
  private final RimSlack rim;

  /**
   * Of a panel.
   *
   * @param targets whose depths are floors
   * @param radiusMm of the widest flat cutter that cut it
   */
  FlattenedField(BentPanel bent, List<Target> targets, double radiusMm) {
    this.bent = bent;
    cutouts = targets.stream().filter(t -> t.level() != null).toList();
    rim = new RimSlack(bent, radiusMm);
    floors =
        targets.stream()
            .flatMapToDouble(
                t -> DoubleStream.of(t.depthMm(), t.roughMm(), t.depthMm() - t.slackMm()))
            .filter(d -> d > 0)
            .distinct()
            .sorted()
            .toArray();
  }

  /**
   * The surface.
   *
   * @param field as it was cut
   * @param uncut before the first cut
   */
  HeightField of(HeightField field, float[] uncut) {
    CellFrame frame = field.frame();
    float[] flat = new float[frame.size()];
    short[] cutout = cutouts.isEmpty() ? null : TargetRaster.of(frame, cutouts);
    IntStream.range(0, frame.rows())
        .parallel()
        .forEach(
            row -> {
              for (int column = 0; column < frame.columns(); column++) {
                int i = row * frame.columns() + column;
                if (field.depth()[i] != uncut[i]) {
                  double x = frame.centreX(column);
                  double y = frame.centreY(row);
                  BentPanel.Level level =
                      cutout == null || cutout[i] == TargetRaster.NONE
                          ? null
                          : cutouts.get(cutout[i]).level();
                  flat[i] = (float) snapped(x, y, flat(x, y, field.depth()[i], level));
                }
              }
            });
    return field.with(flat);
  }

  /** The depth in the flat plan, going by a level of its own where there is one. */
  private double flat(double x, double y, double depth, BentPanel.Level level) {
    if (level == null) {
      return bent.flatMm(x, y, depth);
    }
    double below = depth - bent.faceMm(x, y);
    return below <= 0 ? below : Math.max(0, level.flatMm() + below - level.depthMm(x, y));
  }

  private double snapped(double x, double y, double flat) {
    double floor = nearestFloor(flat);
    double off = flat - floor;
    if (floor == 0 || Math.abs(off) < 1e-6) {
      return flat;
    }
    double slack = rim.atMm(x, y, off);
    return Math.abs(off) <= slack ? floor : flat - Math.signum(off) * slack;
  }

  private double nearestFloor(double flat) {
    double best = 0;
    for (double floor : floors) {
      if (best == 0 || Math.abs(floor - flat) < Math.abs(best - flat)) {
        best = floor;
      }
    }
    return best;
  }
}
