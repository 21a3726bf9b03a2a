package plyscape.zones.map;

import java.nio.file.Path;

/** One file format of maps. Stateless. */
public interface MapFormat {

  /** Whether a file is of this format, judged by what it holds rather than by its name. */
  boolean accepts(MapHead head);

  /**
   * Whether the place that is asked about doesn't matter to how it reads, so that what several ask
   * for can be picked from all of it.
   */
  default boolean wholly() {
    return true;
  }

  /**
   * Reads what is asked for.
   *
   * @throws plyscape.fault.InputFault if the file can't be read as this format
   */
  MapFile read(Path file, MapQuery query);
}
