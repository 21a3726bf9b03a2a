package plyscape.plan;

import java.util.Optional;

/**
 * Takes the panels of a landscape one by one, each as soon as it is proved, so that none has to be
 * held until the last is. An implementation may know panels that an earlier run left.
 */
public interface PanelStore {

  /** One that keeps figures alone and knows of no earlier run. */
  PanelStore FIGURES = tile -> PanelSummary.of(tile.plan());

  /** Takes a panel that is cut and proved; what remains of it. */
  PanelSummary put(Tile<PanelPlan> tile);

  /** A panel that needn't be cut, as one of the same regions is there already. */
  default Optional<PanelSummary> kept(Tile<Landscape> tile) {
    return Optional.empty();
  }
}
