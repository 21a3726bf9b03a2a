package plyscape.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The reference names every key that a reader knows, as the readers' own source has them. */
class ReferencePageTest {

  private static final Path READERS = Path.of("src/main/java/plyscape/job");

  /** Lists of known keys: arguments of the two calls that take them, and constants called KEYS. */
  private static final Pattern KNOWN =
      Pattern.compile("(?:Keys\\.of|\\.child)\\(([^;]*?)\\)|KEYS = \\{([^}]*)\\}");

  private static final Pattern KEY = Pattern.compile("\"([a-z][a-z_]+)\"");

  /** Keys of other files: shelves of veneers, and words that aren't keys. */
  private static final Set<String> OTHERS = Set.of("veneers", "sheets", "glue", "count", "price");

  private static Set<String> known() throws IOException {
    Set<String> out = new TreeSet<>();
    try (Stream<Path> files = Files.walk(READERS)) {
      for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
        if (file.toString().endsWith("ShelfReader.java")) {
          continue;
        }
        Matcher lists = KNOWN.matcher(Files.readString(file));
        while (lists.find()) {
          Matcher keys = KEY.matcher(lists.group());
          while (keys.find()) {
            out.add(keys.group(1));
          }
        }
      }
    }
    out.removeAll(OTHERS);
    return out;
  }

  private static Set<String> named() {
    Set<String> out = new TreeSet<>();
    for (String topic : ReferencePage.TOPICS) {
      Matcher keys =
          Pattern.compile("^\\| `([a-z_.\\[\\]]+)` \\|", Pattern.MULTILINE)
              .matcher(ReferencePage.source(topic));
      while (keys.find()) {
        out.addAll(List.of(keys.group(1).replace("[]", "").split("\\.")));
      }
      // Keys within a value, such as {min: 2, max: 4}.
      Matcher within = Pattern.compile("[{ ]([a-z_]+):").matcher(ReferencePage.source(topic));
      while (within.find()) {
        out.add(within.group(1));
      }
    }
    return out;
  }

  @Test
  void everyKeyThatIsRead_isInTheReference() throws IOException {
    Set<String> known = known();
    assertTrue(known.size() > 80, "found only " + known.size() + " keys in the readers");
    known.removeAll(named());
    assertEquals(Set.of(), known);
  }

  @Test
  void pages_areRoff() {
    for (String topic : ReferencePage.TOPICS) {
      String page = ReferencePage.text(topic);
      assertTrue(page.startsWith(".TH PLYSCAPE-" + topic.toUpperCase(java.util.Locale.ROOT)));
      assertTrue(page.contains(".TP\n\\fB"), topic);
      assertTrue(page.lines().noneMatch(line -> line.startsWith("|")), topic);
    }
    assertTrue(ReferencePage.text("job").contains("\\fBtools[].stepdown\\fR (2)"));
  }
}
