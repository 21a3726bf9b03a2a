package plyscape.job;

import java.util.List;
import plyscape.fault.InputFault;
import plyscape.job.yaml.Keys;
import plyscape.job.yaml.Keys.Range;
import plyscape.job.yaml.YamlNode;
import plyscape.text.Template;

/**
 * Reads {@code panel}: the size of one panel, the border, and how many panels carry the landscape
 * together.
 */
final class PanelKeys {

  private static final Range SIDE = Range.mm(5, 5000);
  private static final String TILES_WANTED = "columns and rows of panels, such as [3, 2]";

  /** Seams lie on the grid of all outlines. */
  private static final double PLACES = 1000;

  private PanelKeys() {}

  static Job.PanelSpec read(Keys keys) {
    Keys panel = keys.child("panel", "width", "height", "border", "tiles", "top_map", "turn");
    double width = panel.number("width", 240, SIDE);
    double height = panel.number("height", 240, SIDE);
    double border = panel.number("border", 6, Range.mm(0, 1000));
    YamlNode tiles = panel.optional("tiles", TILES_WANTED);
    List<Double> counts =
        tiles == null
            ? List.of(1.0, 1.0)
            : Keys.numbers(tiles, 2, Range.whole(1, 20, ""), TILES_WANTED);
    Job.PanelSpec spec =
        new Job.PanelSpec(
            width,
            height,
            border,
            counts.get(0).intValue(),
            counts.get(1).intValue(),
            TopMapKeys.read(panel, counts.get(0).intValue(), counts.get(1).intValue()),
            panel.number("turn", 0, Range.of(-360, 360, "degrees")));
    Job.PanelSpec whole = spec.whole();
    if (!(2 * border <= Math.min(whole.widthMm(), whole.heightMm()) - 1)) {
      throw new InputFault(
          panel.place("border"),
          Template.fill(
              "a border of %s mm on a panel of %s x %s mm",
              border, whole.widthMm(), whole.heightMm()),
          "wanted less than half the shorter side, so that at least 1 mm is carved");
    }
    if (spec.tiled()) {
      requireOnGrid(panel, "width", width);
      requireOnGrid(panel, "height", height);
    }
    return spec;
  }

  private static void requireOnGrid(Keys panel, String key, double mm) {
    if (mm != Math.rint(mm * PLACES) / PLACES) {
      throw new InputFault(
          panel.place(key),
          "found " + mm,
          "panels that butt need a size in whole thousandths of a mm");
    }
  }
}
