package plyscape.house;

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

/** What comments cite of the contract stands there: sections by number, and no other contract. */
class ContractCitesTest {

  private static final Pattern CITED =
      Pattern.compile("contract\\.md,[\\s*]+sections? (\\d+)(?:[\\s*]+and[\\s*]+(\\d+))?");

  @Test
  void citedSections_standInTheContract() throws IOException {
    Set<String> headings = new TreeSet<>();
    Matcher heading =
        Pattern.compile("(?m)^## (\\d+)\\. ").matcher(Files.readString(Path.of("src/contract.md")));
    while (heading.find()) {
      headings.add(heading.group(1));
    }
    Set<String> unknown = new TreeSet<>();
    int cites = 0;
    for (Path source : sources()) {
      Matcher cited = CITED.matcher(Files.readString(source));
      while (cited.find()) {
        cites++;
        for (int g = 1; g <= 2; g++) {
          if (cited.group(g) != null && !headings.contains(cited.group(g))) {
            unknown.add(source + ": section " + cited.group(g));
          }
        }
      }
    }
    assertEquals(Set.of(), unknown);
    assertTrue(cites > 20, cites + " cites");
  }

  @Test
  void noOtherContractIsCited() throws IOException {
    Pattern other = Pattern.compile("(?i)(?<!/)\\bcontract,? \\(?section");
    Set<String> found = new TreeSet<>();
    for (Path source : sources()) {
      if (other.matcher(Files.readString(source)).find()) {
        found.add(source.toString());
      }
    }
    assertEquals(Set.of(), found);
  }

  private static List<Path> sources() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src"))) {
      return files
          .filter(file -> file.toString().endsWith(".java"))
          .filter(file -> !file.endsWith("ContractCitesTest.java"))
          .sorted()
          .toList();
    }
  }
}
