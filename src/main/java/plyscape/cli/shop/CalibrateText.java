package plyscape.cli.shop;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import plyscape.cli.talk.JsonText;
import plyscape.fault.Warnings;
import plyscape.layup.CutAllowance;
import plyscape.layup.DepthModel;
import plyscape.layup.Depths;
import plyscape.layup.Layup;
import plyscape.layup.Method;
import plyscape.layup.PanelPoint;
import plyscape.layup.Sanding;
import plyscape.layup.Top;
import plyscape.layup.calibration.Calibration;
import plyscape.shop.CalibratedLayup;
import plyscape.text.Numbers;
import plyscape.text.TextTable;

/** What readings say about a layup's boundaries: for a person, and as JSON. */
final class CalibrateText {

  private CalibrateText() {}

  /** The boundaries as a table, and notes, for a person. */
  static String table(Layup layup, Calibration found) {
    TextTable table =
        new TextTable()
            .left("at")
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
          b.at() == null ? "" : b.at().toString(),
          Integer.toString(b.plyNumber()),
          layup.plies().get(b.plyNumber() - 1).name(),
          Numbers.fixed(b.depthMm(), 4),
          Numbers.fixed(b.halfWidth95Mm(), 4),
          Numbers.fixed(b.toleranceMm(), 4),
          Numbers.fixed(before[b.plyNumber() - 1], 4),
          Integer.toString(b.readings()));
    }
    List<String> notes = new ArrayList<>();
    if (found.noise().sigmaMm() > 0) {
      notes.add(
          "A reading scatters by "
              + mm(found.noise().sigmaMm())
              + " mm (one sigma, "
              + found.noise().degrees()
              + " degrees of freedom).");
    }
    if (found.boundaries().stream().anyMatch(b -> b.at() != null)) {
      notes.add(corners(found.layup()));
    }
    return table.text() + (notes.isEmpty() ? "" : "\n" + String.join("\n", notes) + "\n");
  }

  /** The outcome for scripts. */
  static String json(Layup layup, Calibration found, Warnings warnings) {
    ObjectNode root = JsonText.object("plyscape-calibrate-1");
    root.put("layup", layup.name());
    boundaries(root.putArray("boundaries"), layup, found);
    root.put("measured_bottoms_tolerance_mm", found.layup().measured().bottomsToleranceMm());
    root.put("reading_sigma_mm", found.noise().sigmaMm());
    root.put("degrees_of_freedom", found.noise().degrees());
    root.put("scatter_factor", found.noise().factor());
    outliers(root.putArray("outliers"), found);
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

  private static void boundaries(ArrayNode list, Layup layup, Calibration found) {
    for (Calibration.Boundary b : found.boundaries()) {
      ObjectNode node = list.addObject();
      if (b.at() != null) {
        node.putArray("at").add(b.at().xMm()).add(b.at().yMm());
      }
      node.put("ply", b.plyNumber())
          .put("name", layup.plies().get(b.plyNumber() - 1).name())
          .put("bottom_mm", b.depthMm())
          .put("half_width_95_mm", b.halfWidth95Mm())
          .put("tolerance_mm", b.toleranceMm())
          .put("readings", b.readings());
    }
  }

  private static void outliers(ArrayNode list, Calibration found) {
    for (Calibration.SetAside o : found.outliers()) {
      list.addObject()
          .put("row", o.reading().row())
          .put("ply", o.reading().plyNumber())
          .put("edge", o.reading().top() ? "top" : "bottom")
          .put("depth_mm", o.reading().depthMm())
          .put("off_mm", o.offMm());
    }
  }

  /** How sure the rest of the panel is: readings from one corner say little about the others. */
  private static String corners(Layup layup) {
    PanelPoint centre = layup.measured().centre();
    int ply = Math.max(1, layup.plies().size() - 1);
    Depths depths =
        DepthModel.depths(
            layup, new CutAllowance(0, Method.RSS, 0, new Sanding(0, 0), Top.LEAVE, 0), true);
    StringBuilder out = new StringBuilder("The bottom of ply " + ply + " is now known at");
    double worst = 0;
    for (double x : new double[] {0, 2 * centre.xMm()}) {
      for (double y : new double[] {0, 2 * centre.yMm()}) {
        PanelPoint at = new PanelPoint(x, y);
        double tolerance = depths.of(ply, at).bottomToleranceMm();
        worst = Math.max(worst, tolerance);
        out.append(' ').append(at).append(" to +-").append(mm(tolerance)).append(',');
      }
    }
    double best =
        layup.measured().places().stream()
            .mapToDouble(p -> depths.of(ply, p.at()).bottomToleranceMm())
            .min()
            .orElse(worst);
    out.append(" where it was read to +-").append(mm(best)).append(" mm.");
    if (worst > 2 * best) {
      out.append(
          " Far from the readings that is the press's word alone: read at other corners too.");
    }
    return out.append('\n').toString();
  }

  private static String mm(double value) {
    return Numbers.fixed(value, 3);
  }
}
