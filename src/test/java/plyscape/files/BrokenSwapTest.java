package plyscape.files;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.Place;

/** What is said of an output that isn't there, by what lies beside its place. */
class BrokenSwapTest {

  @TempDir Path dir;

  private String said() {
    Path out = dir.resolve("out");
    return InputFile.missing(out, Place.file(out.toString()), null).getMessage();
  }

  @Test
  void bothHalvesOfABrokenSwap_areNamed() throws IOException {
    Files.createDirectory(dir.resolve(".out.plyscape-k-1.old"));
    Files.createDirectory(dir.resolve(".out.plyscape-k-1.part"));
    assertTrue(said().contains("\".out.plyscape-k-1.old\""), said());
    assertTrue(said().contains("\".out.plyscape-k-1.part\""), said());
  }

  @Test
  void aRunThatIsAtWork_orAnotherOutputsHalves_areNot() throws IOException {
    Files.createDirectory(dir.resolve(".out.plyscape-k-1.part"));
    Files.createDirectory(dir.resolve(".other.plyscape-k-1.old"));
    Files.createDirectory(dir.resolve(".other.plyscape-k-1.part"));
    assertFalse(said().contains("broken off"), said());
  }
}
