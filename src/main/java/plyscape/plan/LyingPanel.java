package plyscape.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import plyscape.bend.PanelShape;
import plyscape.layup.Depths;
import plyscape.layup.PanelPoint;
import plyscape.layup.PlyDepth;
import plyscape.simulate.BentPanel;
import plyscape.simulate.ProbedTop;

/**
 * A panel as it lies, for the simulation: from the readings and the depths by place, not from what
 * the paths were bent by.
 */
public final class LyingPanel {

  private LyingPanel() {}

  /** How a panel lies, or null for one that is flat and the same everywhere. */
  public static BentPanel of(Landscape panel) {
    PanelShape shape = panel.shape();
    if (shape.flat()) {
      return null;
    }
    ProbedTop top =
        shape
            .topMap()
            .map(
                map ->
                    ProbedTop.of(
                        map.readings().stream()
                            .map(r -> new double[] {r.x(), r.y(), r.z() - shape.faceMm()})
                            .toList()))
            .orElse(null);
    return new BentPanel(top, levels(panel.depths()), bottom(panel.depths()));
  }

  /** Targets by place of all plies that lie deeper than the one above. */
  private static List<BentPanel.Level> levels(Depths depths) {
    List<BentPanel.Level> levels = new ArrayList<>();
    double last = 0;
    for (PlyDepth at : depths) {
      if (at.targetMm() > last) {
        last = at.targetMm();
        levels.add(level(depths, at));
      }
    }
    return levels;
  }

  /** The panel's bottom by place, for a target so much below it. */
  public static BentPanel.Level below(Depths depths, double moreMm) {
    return level(
        depths.thicknessMm() + moreMm, at -> depths.bottom(at).bottomMm() + moreMm, depths.bows());
  }

  /** The panel's bottom by place. */
  public static BentPanel.Level bottom(Depths depths) {
    return below(depths, 0);
  }

  /** Target depth of a ply by place: as far above the ply's middle as at the centre. */
  public static BentPanel.Level level(Depths depths, PlyDepth at) {
    int ply = at.ply().number();
    double higher = at.midMm() - at.targetMm();
    return level(at.targetMm(), p -> depths.of(ply, p).midMm() - higher, depths.bows());
  }

  /** Through depths at places 100 mm apart. */
  private static BentPanel.Level level(
      double flatMm, ToDoubleFunction<PanelPoint> depth, boolean bows) {
    double origin = depth.applyAsDouble(new PanelPoint(0, 0));
    double atX = depth.applyAsDouble(new PanelPoint(100, 0));
    double atY = depth.applyAsDouble(new PanelPoint(0, 100));
    double square =
        bows ? (depth.applyAsDouble(new PanelPoint(200, 0)) - 2 * atX + origin) / 20_000 : 0;
    return new BentPanel.Level(
        flatMm,
        origin,
        (atX - origin) / 100 - 100 * square,
        (atY - origin) / 100 - 100 * square,
        square);
  }
}
