package plyscape.terrain;

import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.Fault;
import plyscape.fault.Mutant;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.job.TerrainOptions;
import plyscape.job.TerrainSpec;
import plyscape.terrain.tiff.TiffFixture;

/**
 * Broken files: whatever bytes are changed, a raster is read or refused as bad input; nothing else
 * comes out.
 */
class RasterMutationTest {

  private static final int SEEDS = 100;

  @TempDir Path dir;

  @Test
  void tiffs_areReadOrRefused() throws IOException {
    double[] ground = {10, 20, 30, 40, 50, 60, 70, 80, 90, 100, 110, 120};
    mutate(
        new TiffFixture(4, 3, ground)
            .placed(500000, 5200000, 30, 30)
            .crs(32632, true, true)
            .write(dir.resolve("a.tif")));
    mutate(
        new TiffFixture(4, 3, ground)
            .bigTiff()
            .tiled(16)
            .compressed(8, 3)
            .placed(0, 0, 1, 1)
            .write(dir.resolve("b.tif")));
    Path layouts = Path.of("src/test/resources/plyscape/terrain/layouts");
    for (String name : List.of("i16-lzw-p2-tiles", "u16-packbits", "f32-zstd-p3-tiles")) {
      mutate(layouts.resolve(name + ".tif"));
    }
  }

  @Test
  void textAndPictures_areReadOrRefused() throws IOException {
    mutate(
        Files.writeString(
            dir.resolve("a.asc"),
            "ncols 4\n"
                + "nrows 3\n"
                + "xllcorner 0\n"
                + "yllcorner 0\n"
                + "cellsize 10\n"
                + "1 2 3 4\n"
                + "5 6 7 8\n"
                + "9 10 11 12\n"));
    mutate(new PngFixture().write(dir.resolve("a.png")));
  }

  /** A grey PNG. */
  private static final class PngFixture {
    Path write(Path file) throws IOException {
      var image =
          new java.awt.image.BufferedImage(8, 8, java.awt.image.BufferedImage.TYPE_USHORT_GRAY);
      for (int i = 0; i < 64; i++) {
        image.getRaster().setSample(i % 8, i / 8, 0, i * 100);
      }
      javax.imageio.ImageIO.write(image, "png", file.toFile());
      return file;
    }
  }

  private void mutate(Path whole) throws IOException {
    byte[] bytes = Files.readAllBytes(whole);
    String name = whole.getFileName().toString();
    for (int seed = 0; seed < SEEDS; seed++) {
      byte[] changed = Mutant.of(bytes, seed);
      Path file = Files.write(dir.resolve("m-" + name), changed);
      TerrainSpec spec =
          new TerrainSpec(
              file,
              null,
              "",
              List.of(1, 2),
              TerrainSpec.NamedBands.SCALE,
              0.4,
              TerrainOptions.PLAIN);
      try {
        TerrainReader.read(spec, new Job.PanelSpec(240, 240, 6), 1.5, new Warnings());
      } catch (Fault refused) {
        // As it should be; its message is checked elsewhere.
      } catch (RuntimeException | Error e) {
        fail(name + ", seed " + seed + ": " + e, e);
      }
    }
  }
}
