package plyscape.job;

import java.nio.file.Path;

/**
 * Where the probed heights of the panel's top face are. Immutable.
 *
 * @param file path of the readings; {@code {tile}} in it stands for a panel's name
 * @param toleranceMm plus or minus of a reading
 */
public record TopMapSpec(String file, double toleranceMm) {

  /** Stands for the name of one of several panels. */
  public static final String TILE = "{tile}";

  /** Checks the sign. */
  public TopMapSpec {
    if (!(toleranceMm >= 0)) {
      throw new IllegalArgumentException("tolerance " + toleranceMm);
    }
  }

  /**
   * The file of one panel.
   *
   * @param tile its name, such as {@code tile-1-2}; any for a single panel
   */
  public Path fileOf(String tile) {
    return Path.of(file.replace(TILE, tile));
  }
}
