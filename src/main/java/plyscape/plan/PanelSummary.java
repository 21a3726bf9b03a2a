package plyscape.plan;

import java.util.Objects;

/**
 * What is kept in memory of a panel that was cut and proved, when its geometry has gone.
 *
 * @param figures what it came to
 * @param picture a small one of it from above, as a PNG file; empty where none is wanted
 * @param json its {@code plan.json}; "" where none is wanted
 * @param earlier whether an earlier run cut it: then there are no estimates among its figures
 */
public record PanelSummary(PanelFigures figures, byte[] picture, String json, boolean earlier) {

  /** Checks that nothing is missing. */
  public PanelSummary {
    Objects.requireNonNull(figures);
    Objects.requireNonNull(picture);
    Objects.requireNonNull(json);
  }

  /** The figures alone. */
  static PanelSummary of(PanelPlan plan) {
    return new PanelSummary(PanelFigures.of(plan), new byte[0], "", false);
  }
}
