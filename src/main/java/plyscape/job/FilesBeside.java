package plyscape.job;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import plyscape.fault.Place;
import plyscape.files.InputFile;

/**
 * Files beside a raster or map that say more of it: its CRS, table, place on the ground, mask or
 * overviews. They go by the map's name without its ending or with it. Each folder is listed once.
 */
public final class FilesBeside {

  private static final Set<String> ENDINGS =
      Set.of("prj", "dbf", "shx", "cpg", "sbn", "sbx", "wld", "msk", "ovr", "aux.xml");

  private final Map<Path, List<String>> listed = new HashMap<>();

  /** Those that are there, sorted. */
  public List<Path> of(Path file) {
    String name = file.getFileName().toString();
    int dot = name.lastIndexOf('.');
    String stem = dot > 0 ? name.substring(0, dot) : name;
    String ending = dot > 0 ? name.substring(dot + 1).toLowerCase(Locale.ROOT) : "";
    return names(file).stream()
        .filter(
            other ->
                !other.equals(name) && (fits(other, stem, ending) || fits(other, name, ending)))
        .map(file::resolveSibling)
        .toList();
  }

  private static boolean fits(String other, String start, String ending) {
    if (!other.startsWith(start + ".")) {
      return false;
    }
    String rest = other.substring(start.length() + 1).toLowerCase(Locale.ROOT);
    return ENDINGS.contains(rest) || isWorldFile(rest, ending);
  }

  /** Such as {@code tfw} or {@code tifw} for {@code tif}. */
  private static boolean isWorldFile(String rest, String ending) {
    String brief =
        ending.length() < 2 ? ending : "" + ending.charAt(0) + ending.charAt(ending.length() - 1);
    return rest.equals(brief + "w") || rest.equals(ending + "w");
  }

  private List<String> names(Path file) {
    Path folder = file.toAbsolutePath().normalize().getParent();
    return listed.computeIfAbsent(folder, FilesBeside::list);
  }

  private static List<String> list(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(Files::isRegularFile)
          .map(file -> file.getFileName().toString())
          .sorted()
          .toList();
    } catch (IOException e) {
      throw InputFile.missing(folder, Place.file(folder.toString()), e);
    }
  }
}
