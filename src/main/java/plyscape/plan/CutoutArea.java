package plyscape.plan;

import java.util.Objects;
import org.locationtech.jts.geom.Geometry;
import plyscape.simulate.BentPanel;

/**
 * Where something is cut besides the pockets. Immutable; the area is never changed.
 *
 * @param what pin, outline or tab
 * @param depthMm to which it is cut
 * @param slackMm how much higher wood may stay there, mm
 * @param area polygons, panel mm
 * @param level depth by place on a panel that isn't flat or equally thick; else null
 */
public record CutoutArea(
    String what, double depthMm, double slackMm, Geometry area, BentPanel.Level level) {

  /** Checks that nothing is missing. */
  public CutoutArea {
    Objects.requireNonNull(what);
    Objects.requireNonNull(area);
  }
}
