package plyscape.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.job.JobReader;
import plyscape.job.yaml.Setting;

class JobTableTest {

  @TempDir Path folder;

  @Test
  void rows_areJobs_withThePlaceOfEachCell() throws IOException {
    JobTable table =
        read(
            """
            # places of the county
            panel.turn, name,terrain.centre

            30,Süd moor,"518500, 6161200"
            0,north,"1, 2"
            """);
    assertEquals(List.of(), table.faults());
    assertEquals(List.of("Süd moor", "north"), names(table));
    Setting centre = table.rows().get(0).settings().get(2);
    assertEquals("terrain.centre=518500, 6161200", centre.key() + "=" + centre.value());
    assertTrue(centre.valuePlace().toString().endsWith("t.csv:4:13: terrain.centre"));
    assertTrue(centre.keyPlace().toString().endsWith("t.csv:2:18"));
  }

  @Test
  void aSpreadsheetsMarkAndLineEnds_areNoPartOfIt() throws IOException {
    JobTable table = read("\ufeffname,panel.turn\r\na,1\r\nb,2");
    assertEquals(List.of("a", "b"), names(table));
    assertEquals("2", table.rows().get(1).settings().get(1).value());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          title,panel.turn     | :1:1: no column "name" among title, panel.turn
          name;panel.turn      | :1:1: cells parted by semicolons
          name,panel.turn,name | :1:17: a second column "name"
          name,,panel.turn     | :1:6: a column without a key
          # nothing            | : it has no row
          """)
  void withoutAHead_nothingElseIsJudged(String head, String message) {
    InputFault fault = assertThrows(InputFault.class, () -> read(head + "\na\n"));
    assertTrue(fault.getMessage().contains("t.csv" + message), fault.getMessage());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      textBlock =
          """
          a                | :3:1: found 1 cell under 2 columns
          a,0,6            | :3:1: found 3 cells under 2 columns; a value with commas stands in quotes
          a,               | :3:3: panel.turn: an empty cell
          ,1               | :3:1: name: an empty cell
          "a,1             | :3:1: row 3: a quote that isn't closed
          first,1          | :3:1: name: "first" a second time, first in line 2
          First,1          | :3:1: name: "First" is like the name in line 2
          a/b,1            | :3:1: name: found "a/b"; a folder's name has none of
          ..,1             | :3:1: name: found ".."; a folder's name begins and ends with no point
          .hidden,1        | a folder's name begins and ends with no point
          NUL.txt,1        | Windows keeps that name for itself
          batch-1-of-2.json,1 | the series writes a file of that name
          """)
  void aSlip_isToldWithRowAndColumn(String row, String message) throws IOException {
    JobTable table = read("name,panel.turn\nfirst,1\n" + row + "\n");
    assertEquals(1, table.faults().size(), table.faults()::toString);
    String found = table.faults().get(0).getMessage();
    assertTrue(found.contains(message), found);
  }

  @Test
  void namesThatAreOneForSomeSystems_areTold() throws IOException {
    String composed = "s\u00fcd";
    String apart = "su\u0308d"; // the same with its marks apart, as file systems of macOS give it
    JobTable table = read("name\n" + composed + "\n" + apart + "\n" + "x".repeat(201) + "\n");
    assertEquals(2, table.faults().size(), table.faults()::toString);
    assertTrue(table.faults().get(1).getMessage().contains("at most 200 bytes"));
  }

  @Test
  void theSamplesTable_isSound() {
    Path samples = Path.of("samples", "eildon");
    JobTable table = JobTable.read(samples.resolve("places.csv"));
    assertEquals(List.of("north", "south", "west", "east"), names(table));
    RowCheck.of(table, row -> JobReader.read(samples.resolve("job.yaml"), row, new Warnings()));
  }

  @Test
  void allFaultsComeAtOnce_upToALimit() throws IOException {
    JobTable table = read("name,panel.turn\n" + "a/b,\n".repeat(30));
    InputFault fault = assertThrows(InputFault.class, () -> RowCheck.of(table, row -> {}));
    List<String> lines = fault.getMessage().lines().toList();
    assertEquals("89 faults, nothing was planned", lines.get(0));
    assertEquals(TableFaults.MOST + 2, lines.size());
    assertEquals("and 69 more", lines.get(lines.size() - 1));
  }

  private JobTable read(String text) throws IOException {
    return JobTable.read(Files.writeString(folder.resolve("t.csv"), text));
  }

  private static List<String> names(JobTable table) {
    return table.rows().stream().map(JobTable.Row::name).toList();
  }
}
