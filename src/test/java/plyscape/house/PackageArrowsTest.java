package plyscape.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
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

  private static final Pattern NAME = Pattern.compile("`([a-z]+(?:\\.[a-z]+)?)`");

  /**
   * Package to what it may use directly, as the table in DEVELOPERS.md has it; what those use is
   * allowed too. Everyone may use fault and text. A package inside another is for its own family:
   * from outside it may be used only where the row names it.
   */
  private static final Map<String, Set<String>> TABLE = table();

  private static Map<String, Set<String>> table() {
    Map<String, Set<String>> table = new TreeMap<>();
    boolean inside = false;
    for (String line : developersPage().lines().toList()) {
      inside = line.startsWith("| package | uses") || inside && line.startsWith("|");
      if (inside && line.contains("`")) {
        String[] cells = line.split("\\|");
        for (String name : names(cells[1])) {
          table.put(name, new TreeSet<>(names(cells[2])));
        }
      }
    }
    table.values().forEach(names -> names.retainAll(table.keySet())); // rows may name files too
    table.get("fault").clear();
    table.get("text").clear();
    return table;
  }

  private static String developersPage() {
    try {
      return Files.readString(Path.of("DEVELOPERS.md"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<String> names(String cell) {
    return NAME.matcher(cell).results().map(found -> found.group(1)).toList();
  }

  @Test
  void table_namesEveryPackage_andNoArrowComesBack() throws IOException {
    Set<String> packages = new TreeSet<>();
    for (Path file : sources()) {
      packages.add(packageOf(file));
    }
    assertEquals(packages, TABLE.keySet());
    for (String name : packages) {
      assertFalse(reach(name, new TreeSet<>()).contains(name), name + " is above and below itself");
    }
  }

  @Test
  void imports_followTheTable() throws IOException {
    List<String> wrong = new ArrayList<>();
    for (Path file : sources()) {
      String from = packageOf(file);
      Set<String> allowed = allowed(from);
      for (String name : imports(file)) {
        if (name.startsWith("plyscape.")) {
          String to = packageOf(name);
          if (!to.equals(from) && !allowed.contains(to)) {
            wrong.add(file.getFileName() + ": " + from + " -> " + to);
          }
        }
      }
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void insideOfToolpath_isBarredFromOutside() {
    assertFalse(allowed("cli").contains("toolpath.ring"));
    assertFalse(allowed("plan").contains("toolpath.lattice"));
    assertTrue(allowed("plan").contains("toolpath.task"));
    assertTrue(allowed("toolpath").contains("toolpath.ring"));
  }

  /** What a package may import: no inner package of another family that its row doesn't name. */
  private static Set<String> allowed(String from) {
    Set<String> allowed = reach(from, new TreeSet<>(Set.of("fault", "text")));
    allowed.removeIf(
        to ->
            to.contains(".") && !family(to).equals(family(from)) && !TABLE.get(from).contains(to));
    return allowed;
  }

  private static String family(String name) {
    return name.split("\\.")[0];
  }

  @Test
  void geoTools_onlyWhereCrssAndTiffsAreRead() throws IOException {
    assertEquals(List.of(), users("org.geotools.", Set.of("terrain.crs", "terrain.tiff")));
  }

  @Test
  void simulator_usesNoGeometryLibraryAndNoPlanner() throws IOException {
    List<String> wrong = new ArrayList<>();
    for (Path file : sources()) {
      if (family(packageOf(file)).equals("simulate")) {
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
    Path folder = SOURCES.relativize(file).getParent();
    return folder == null ? "" : folder.toString().replace('\\', '.').replace('/', '.');
  }

  /** The package in an import: its parts below plyscape in small letters. */
  private static String packageOf(String imported) {
    StringBuilder name = new StringBuilder();
    for (String part : imported.split("\\.")) {
      if (Character.isUpperCase(part.charAt(0))) {
        break;
      }
      if (!part.equals("plyscape") || name.length() > 0) {
        name.append(name.length() == 0 ? "" : ".").append(part);
      }
    }
    return name.toString();
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
