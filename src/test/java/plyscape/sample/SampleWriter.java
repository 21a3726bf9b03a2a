package plyscape.sample;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Writes the made files of {@code samples/tarn-hollow}: {@code terrain.tif} and {@code
 * zones.geojson}. Run it from the project's root after changing the valley; {@code SampleFilesTest}
 * says when the files and the generator part.
 */
public final class SampleWriter {

  private SampleWriter() {}

  /** No arguments. */
  public static void main(String[] args) throws IOException {
    Path directory = Path.of("samples", "tarn-hollow");
    Files.createDirectories(directory);
    Files.write(directory.resolve("terrain.tif"), terrain());
    Files.write(
        directory.resolve("zones.geojson"),
        new TarnHollowMap().geoJson().getBytes(StandardCharsets.UTF_8));
  }

  static byte[] terrain() {
    return FloatTiff.write(
        TarnHollow.raster(),
        TarnHollow.CELLS,
        TarnHollow.MIN_X,
        TarnHollow.MIN_Y + TarnHollow.SIZE_M,
        TarnHollow.CELL_M,
        32632);
  }
}
