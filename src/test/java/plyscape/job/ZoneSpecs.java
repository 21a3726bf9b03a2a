package plyscape.job;

import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;

/** Zones for tests, in one line. */
public final class ZoneSpecs {

  private ZoneSpecs() {}

  /** Features of a map, with one width or none. */
  public static ZoneSpec of(
      String name,
      Path file,
      SortedMap<String, List<Object>> where,
      Integer ply,
      Integer sink,
      LineWidth width) {
    return new ZoneSpec(
        name, new MapPick(file, "", where), ply, sink, width, null, ZoneSpec.Keep.MERGE);
  }

  /** Width on the panel, mm; none for null. */
  public static LineWidth mm(Double mm) {
    return new LineWidth(mm, null, null);
  }

  /** Width on the ground, metres; none for null. */
  public static LineWidth ground(Double metres) {
    return new LineWidth(null, metres, null);
  }
}
