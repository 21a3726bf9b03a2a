package plyscape.files;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.Place;

/** What is said of an input that isn't there. */
class InputFileTest {

  @TempDir Path dir;

  private String said(Place place) {
    return InputFile.missing(dir.resolve("nowhere.tif"), place, null).getMessage();
  }

  @Test
  void missing_saysFromWhereItsNameCounts() {
    String inJob = said(Place.at("job.yaml", 3, 9));
    assertTrue(inJob.contains("count from the file that names them"), inJob);
    String given = said(Place.file("nowhere.tif"));
    assertTrue(given.contains("count from where the command is given"), given);
  }
}
