package plyscape.plan;

import java.util.List;
import java.util.Objects;
import plyscape.bands.Bands;
import plyscape.terrain.Terrain;
import plyscape.zones.Zone;

/**
 * What the maps say of a carved area. Immutable.
 *
 * @param terrain the ground over it
 * @param bands elevations to plies
 * @param zones zones on the panel
 */
public record MapData(Terrain terrain, Bands bands, List<Zone> zones) {

  /** Copies the list. */
  public MapData {
    Objects.requireNonNull(terrain);
    Objects.requireNonNull(bands);
    zones = List.copyOf(zones);
  }
}
