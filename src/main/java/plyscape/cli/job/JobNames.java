package plyscape.cli.job;

import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Names for the output directories of several jobs: short, and each only once. */
final class JobNames {

  private JobNames() {}

  /** File name without its ending. */
  static String stem(Path file) {
    String name = file.getFileName() == null ? "" : file.getFileName().toString();
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(0, dot) : name;
  }

  /**
   * Each file's name, in the order given: its stem; the folder's name for {@code FOLDER/job.yaml};
   * with a number behind where two would be the same. A file given twice counts once.
   */
  static Map<Path, String> distinct(Collection<Path> files) {
    Map<Path, String> names = new LinkedHashMap<>();
    for (Path file : files) {
      names.putIfAbsent(file, name(file));
    }
    Map<String, Integer> uses = new TreeMap<>();
    for (Map.Entry<Path, String> entry : names.entrySet()) {
      String name = entry.getValue();
      int use = uses.merge(name, 1, Integer::sum);
      String numbered = use == 1 ? name : name + "-" + use;
      while (use > 1 && (uses.containsKey(numbered) || names.containsValue(numbered))) {
        numbered = name + "-" + ++use;
      }
      uses.put(name, use);
      entry.setValue(numbered);
    }
    return names;
  }

  private static String name(Path file) {
    String stem = stem(file);
    Path folder = file.toAbsolutePath().normalize().getParent();
    boolean plain = List.of("job", "panel").contains(stem);
    return plain && folder != null && folder.getFileName() != null
        ? folder.getFileName().toString()
        : stem;
  }
}
