package plyscape.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.InputFault;
import plyscape.layup.Shelf;

class ShelfReaderTest {

  private static final Path SAMPLE = Path.of("samples/tarn-hollow/veneers.yaml");

  @TempDir private Path folder;

  @Test
  void sample_reads() {
    Shelf shelf = ShelfReader.read(SAMPLE);
    assertEquals(9, shelf.plies());
    assertEquals(8, shelf.veneers().size());
    assertEquals(new Shelf.Wish("river", "deep blue"), shelf.wishes().get(1));
    assertEquals(0.04, shelf.glueLine().thicknessMm());
  }

  @Test
  void badShelves_faultWithPlaceAndWhatWouldDo() throws IOException {
    String[][] changes = {
      {"thickness: 1.5", "thickness: -1.5", "0.01"},
      {"count: 3", "count: 2.5", "2.5"},
      {"count: 3", "cuont: 3", "did you mean \"count\""},
      {"walnut, river", "wallnut, river", "did you mean \"walnut\""},
      {"name: heather", "name: limestone", "second veneer"},
      {"tolerance: 0.05", "tolerance: 1.6", "no more than the thickness"},
      {"#a987ad", "purple", "colour"},
    };
    String text = Files.readString(SAMPLE);
    for (String[] change : changes) {
      Path file = Files.writeString(folder.resolve("v.yaml"), text.replace(change[0], change[1]));
      InputFault fault = assertThrows(InputFault.class, () -> ShelfReader.read(file), change[1]);
      assertTrue(fault.getMessage().contains(change[2]), fault.getMessage());
      assertTrue(fault.place().line() > 0, fault.getMessage());
    }
  }
}
