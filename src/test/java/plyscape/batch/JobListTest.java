package plyscape.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.InputFault;

class JobListTest {

  @TempDir Path folder;

  @Test
  void namesAreFromTheListsFolder_commentsAndEmptyLinesApart() throws IOException {
    Path list = list("\uFEFF# valleys\r\n\r\n a.yaml \nnorth/b.YML\n  # c.yaml\n");
    assertEquals(
        List.of(folder.resolve("a.yaml"), folder.resolve("north/b.YML")), JobList.read(list));
  }

  @Test
  void otherLines_areFaultsWithTheirNumber() throws IOException {
    assertFault("a.yaml\nb.tif\n", ":2:1: found \"b.tif\"");
    assertFault("# nothing\n", "it lists no job");
  }

  @Test
  void sharesOfAList_areEveryNthAndTogetherTheWhole() {
    List<Integer> all = List.of(0, 1, 2, 3, 4, 5, 6);
    assertEquals(List.of(2, 5), Share.of("3/3").of(all));
    assertEquals(List.of(), Share.of("8/8").of(all));
    List<Integer> together = new ArrayList<>();
    for (int k = 1; k <= 3; k++) {
      together.addAll(new Share(k, 3).of(all));
    }
    assertEquals(all, together.stream().sorted().toList());
    for (String bad : List.of("0/3", "4/3", "1", "1/0", "-1/3", "a/b", "1/3 ")) {
      assertThrows(IllegalArgumentException.class, () -> Share.of(bad), bad);
    }
  }

  private Path list(String text) throws IOException {
    return Files.writeString(folder.resolve("jobs.txt"), text);
  }

  private void assertFault(String text, String part) throws IOException {
    Path list = list(text);
    InputFault fault = assertThrows(InputFault.class, () -> JobList.read(list));
    assertTrue(fault.getMessage().contains(part), fault.getMessage());
  }
}
