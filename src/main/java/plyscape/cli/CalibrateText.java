package plyscape.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import plyscape.fault.Warnings;
import plyscape.layup.Calibration;
import plyscape.layup.Layup;
import plyscape.shop.CalibratedLayup;
import plyscape.text.Numbers;
import plyscape.text.TextTable;

/** What readings told of a layup's boundaries: for a person, and as JSON. */
final class CalibrateText {

  private CalibrateText() {}

  /** The boundaries as a table, and notes, for a person. */
  static String table(Layup layup, Calibration found) {
    TextTable table =
        new TextTable()
            .right("no.")
            .left("ply")
            .right("bottom mm")
            .right("95 % +-")
            .right("3 sigma +-")
            .right("layup said")
            .right("readings");
    double[] before = CalibratedLayup.nominalBottoms(layup);
    for (Calibration.Boundary b : found.boundaries()) {
      table.row(
          Integer.toString(b.plyNumber()),
          layup.plies().get(b.plyNumber() - 1).name(),
          Numbers.fixed(b.depthMm(), 4),
          Numbers.fixed(b.halfWidth95Mm(), 4),
          Numbers.fixed(b.toleranceMm(), 4),
          Numbers.fixed(before[b.plyNumber() - 1], 4),
          b.readings() == 0 ? "kept" : Integer.toString(b.readings()));
    }
    List<String> notes = new ArrayList<>();
    if (found.readingSigmaMm() > 0) {
      notes.add(
          "A reading scatters by "
              + mm(found.readingSigmaMm())
              + " mm (one sigma, "
              + found.degrees()
              + " degrees of freedom).");
    }
    if (found.ordered()) {
      notes.add(
          "Readings that crossed were pulled apart, so that plies keep their order and glue lines stay positive.");
    }
    return table.text() + (notes.isEmpty() ? "" : "\n" + String.join("\n", notes) + "\n");
  }

  /** The outcome for scripts. */
  static String json(Layup layup, Calibration found, Warnings warnings) {
    ObjectNode root = JsonText.object("plyscape-calibrate-1");
    root.put("layup", layup.name());
    ArrayNode list = root.putArray("boundaries");
    for (Calibration.Boundary b : found.boundaries()) {
      list.addObject()
          .put("ply", b.plyNumber())
          .put("name", layup.plies().get(b.plyNumber() - 1).name())
          .put("bottom_mm", b.depthMm())
          .put("half_width_95_mm", b.halfWidth95Mm())
          .put("tolerance_mm", b.toleranceMm())
          .put("readings", b.readings());
    }
    root.put("measured_bottoms_tolerance_mm", found.toleranceMm());
    root.put("reading_sigma_mm", found.readingSigmaMm());
    root.put("degrees_of_freedom", found.degrees());
    root.put("scatter_factor", found.scatterFactor());
    root.put("order_enforced", found.ordered());
    ArrayNode outliers = root.putArray("outliers");
    for (Calibration.SetAside o : found.outliers()) {
      outliers
          .addObject()
          .put("row", o.reading().row())
          .put("ply", o.reading().plyNumber())
          .put("edge", o.reading().top() ? "top" : "bottom")
          .put("depth_mm", o.reading().depthMm())
          .put("off_mm", o.offMm());
    }
    ArrayNode said = root.putArray("warnings");
    warnings
        .list()
        .forEach(
            w ->
                said.addObject()
                    .put("code", w.code())
                    .put("message", w.message())
                    .put("where", w.where()));
    return JsonText.of(root);
  }

  private static String mm(double value) {
    return Numbers.fixed(value, 3);
  }
}
