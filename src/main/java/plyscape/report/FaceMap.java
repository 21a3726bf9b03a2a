package plyscape.report;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Base64;
import plyscape.grid.CellFrame;
import plyscape.job.Job;
import plyscape.plan.Landscape;
import plyscape.region.FaceField;

/**
 * Finished depths of a sculpted panel for the page: square cells from the north-west, thousandths
 * of a mm as 16-bit numbers with the low byte first, in Base64; 65535 where nothing is carved.
 */
final class FaceMap {

  private static final int LONGEST_CELLS = 360;
  private static final int NOTHING = 65_535;

  private FaceMap() {}

  static void put(ObjectNode node, Landscape plan, FaceField faces) {
    Job.PanelSpec panel = plan.job().panel();
    double cell = Math.max(panel.widthMm(), panel.heightMm()) / LONGEST_CELLS;
    int columns = (int) Math.ceil(panel.widthMm() / cell - 1e-9);
    int rows = (int) Math.ceil(panel.heightMm() / cell - 1e-9);
    CellFrame frame = new CellFrame(0, panel.heightMm() - rows * cell, cell, cell, columns, rows);
    double[] cut = faces.depthsMm(frame);
    byte[] bytes = new byte[2 * cut.length];
    for (int i = 0; i < cut.length; i++) {
      double depth = cut[(rows - 1 - i / columns) * columns + i % columns];
      long value =
          Double.isNaN(depth)
              ? NOTHING
              : Math.round((depth + plan.job().allowance().sandingMm()) * 1000);
      int written = (int) Math.min(NOTHING, value);
      bytes[2 * i] = (byte) written;
      bytes[2 * i + 1] = (byte) (written >> 8);
    }
    node.put("columns", columns)
        .put("rows", rows)
        .put("mm", cell)
        .put("depths", Base64.getEncoder().encodeToString(bytes));
  }
}
