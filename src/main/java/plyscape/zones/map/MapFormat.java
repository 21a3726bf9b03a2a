package plyscape.zones.map;

import java.nio.file.Path;

/** One file format of maps. Stateless. */
public interface MapFormat {

  /** Whether a file is of this format, judged by what it holds rather than by its name. */
  boolean accepts(MapHead head);

  /**
   * Reads what is asked for.
   *
   * @throws plyscape.fault.InputFault if the file can't be read as this format
   */
  MapFile read(Path file, MapQuery query);
}
