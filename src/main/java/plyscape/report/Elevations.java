package plyscape.report;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.util.Base64;
import plyscape.grid.Box;
import plyscape.grid.Grid;
import plyscape.plan.Landscape;

/**
 * Elevations of the ground for the page's readout: at the middles of square cells over the carved
 * area from its north-west, in steps from the least, each as the difference from the one before, as
 * {@link Outlines} writes numbers.
 */
final class Elevations {

  private static final int LONGEST_CELLS = 160;

  /** Steps over the whole relief: finer than the readout's whole metres on any mountain. */
  private static final int STEPS = 4000;

  private Elevations() {}

  static void put(ObjectNode node, Landscape plan) {
    Box carved = plan.tiling().carved();
    Grid ground = plan.terrain().elevationM();
    double cell = Math.max(carved.width(), carved.height()) / LONGEST_CELLS;
    int columns = (int) Math.max(1, Math.round(carved.width() / cell));
    int rows = (int) Math.max(1, Math.round(carved.height() / cell));
    double least = plan.terrain().zminM();
    double step = Math.max((plan.terrain().zmaxM() - least) / STEPS, 0.01);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    long before = 0;
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        double z =
            ground.bilinear(
                carved.minX() + (column + 0.5) * carved.width() / columns,
                carved.maxY() - (row + 0.5) * carved.height() / rows);
        long steps = Math.round((z - least) / step);
        Outlines.step(out, steps - before);
        before = steps;
      }
    }
    node.put("columns", columns)
        .put("rows", rows)
        .put("least", least)
        .put("step", step)
        .put("steps", Base64.getEncoder().encodeToString(out.toByteArray()));
  }
}
