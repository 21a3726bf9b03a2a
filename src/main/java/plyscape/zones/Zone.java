package plyscape.zones;

import java.util.List;
import org.locationtech.jts.geom.Geometry;
import plyscape.job.ZoneSpec;

/**
 * A zone on the panel. Immutable.
 *
 * @param spec what was asked for
 * @param area polygonal, in panel mm, clipped to the carved area; may be empty
 * @param features how many features were used
 * @param skipped features left out, with why
 */
public record Zone(ZoneSpec spec, Geometry area, int features, List<Skipped> skipped) {

  /**
   * A feature left out.
   *
   * @param feature its id, name or index
   * @param why a short reason
   */
  public record Skipped(String feature, String why) {}
}
