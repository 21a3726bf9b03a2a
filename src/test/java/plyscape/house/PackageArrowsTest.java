package plyscape.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Reads the imports and fails on an arrow that the package table in DEVELOPERS.md doesn't allow.
 */
class PackageArrowsTest {

  private static final Path SOURCES = Path.of("src/main/java/plyscape");
  private static final Pattern IMPORT =
      Pattern.compile("^import (?:static )?([a-zA-Z0-9_.]+)", Pattern.MULTILINE);

  /**
   * Package to what it may use directly; what those use is allowed too. Everyone may use fault and
   * text.
   */
  private static final Map<String, Set<String>> TABLE = table();

  private static Map<String, Set<String>> table() {
    Map<String, Set<String>> t = new TreeMap<>();
    t.put("fault", Set.of());
    t.put("text", Set.of());
    t.put("grid", Set.of());
    t.put("layup", Set.of());
    t.put("machine", Set.of());
    t.put("job", Set.of("layup", "machine", "grid"));
    t.put("terrain", Set.of("grid", "job"));
    t.put("bands", Set.of("layup", "terrain"));
    t.put("planar", Set.of("grid"));
    t.put("zones", Set.of("grid", "job", "planar", "terrain"));
    t.put("region", Set.of("bands", "zones", "planar", "grid"));
    t.put("toolpath", Set.of("region", "machine"));
    t.put("gcode", Set.of("machine"));
    t.put("simulate", Set.of("gcode", "machine", "grid"));
    t.put("shop", Set.of("layup", "toolpath", "gcode"));
    t.put("plan", Set.of("toolpath", "simulate", "region"));
    t.put("render", Set.of("plan"));
    t.put("report", Set.of("plan", "render"));
    t.put("output", Set.of());
    t.put("cli", Set.of("report", "render", "shop", "output"));
    return t;
  }

  @Test
  void imports_followTheTable() throws IOException {
    List<String> wrong = new ArrayList<>();
    for (Path file : sources()) {
      String from = packageOf(file);
      assertTrue(TABLE.containsKey(from), "package missing in the table: " + from);
      Set<String> allowed = reach(from, new TreeSet<>(Set.of("fault", "text")));
      for (String name : imports(file)) {
        if (name.startsWith("plyscape.")) {
          String to = name.split("\\.")[1];
          if (!to.equals(from) && !allowed.contains(to)) {
            wrong.add(file.getFileName() + ": " + from + " -> " + to);
          }
        }
      }
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void geoTools_onlyInTerrain() throws IOException {
    assertEquals(List.of(), users("org.geotools.", Set.of("terrain")));
  }

  @Test
  void simulator_usesNoGeometryLibraryAndNoPlanner() throws IOException {
    List<String> wrong = new ArrayList<>();
    for (Path file : sources()) {
      if (packageOf(file).equals("simulate")) {
        for (String name : imports(file)) {
          if (name.startsWith("org.locationtech.")
              || name.equals("plyscape.grid.DistanceTransform")) {
            wrong.add(file.getFileName() + ": " + name);
          }
        }
      }
    }
    assertEquals(List.of(), wrong);
  }

  private static List<String> users(String prefix, Set<String> allowed) throws IOException {
    List<String> wrong = new ArrayList<>();
    for (Path file : sources()) {
      if (!allowed.contains(packageOf(file))
          && imports(file).stream().anyMatch(n -> n.startsWith(prefix))) {
        wrong.add(file.toString());
      }
    }
    return wrong;
  }

  private static List<Path> sources() throws IOException {
    try (Stream<Path> files = Files.walk(SOURCES)) {
      return files.filter(f -> f.toString().endsWith(".java")).sorted().toList();
    }
  }

  private static String packageOf(Path file) {
    return SOURCES.relativize(file).getName(0).toString();
  }

  private static List<String> imports(Path file) throws IOException {
    List<String> names = new ArrayList<>();
    Matcher m = IMPORT.matcher(Files.readString(file));
    while (m.find()) {
      names.add(m.group(1));
    }
    return names;
  }

  private static Set<String> reach(String from, Set<String> into) {
    for (String to : TABLE.get(from)) {
      if (into.add(to)) {
        reach(to, into);
      }
    }
    return into;
  }
}
