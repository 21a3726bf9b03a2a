package plyscape.terrain;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Transparency;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.WritableRaster;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.job.TerrainOptions;
import plyscape.job.TerrainOptions.Encoding;
import plyscape.terrain.raster.Raster;

/** PNG: grey and in the two elevation encodings; their numbers after references.md, section 3. */
class PngRasterTest extends RasterTestBase {

  private final Warnings warnings = new Warnings();

  /**
   * 16-bit grey, voids by transparency, placed by a world file whose lines 5 and 6 are the first
   * cell's centre.
   */
  @Override
  Path write(Path dir) throws IOException {
    ComponentColorModel model =
        new ComponentColorModel(
            ColorSpace.getInstance(ColorSpace.CS_GRAY),
            true,
            false,
            Transparency.TRANSLUCENT,
            DataBuffer.TYPE_USHORT);
    WritableRaster raster = model.createCompatibleWritableRaster(COLUMNS, ROWS);
    for (int i = 0; i < GROUND.length; i++) {
      boolean none = Double.isNaN(GROUND[i]);
      raster.setPixel(
          i % COLUMNS, i / COLUMNS, new int[] {none ? 7 : (int) GROUND[i], none ? 0 : 65535});
    }
    Path file = dir.resolve("ground.png");
    ImageIO.write(new BufferedImage(model, raster, false, null), "png", file.toFile());
    Files.writeString(dir.resolve("ground.pgw"), "10\n0\n0\n-10\n1005\n2025\n");
    return file;
  }

  @Override
  double[] westNorthCell() {
    return new double[] {1000, 2030, 10};
  }

  private Path colours(int... rgb) throws IOException {
    BufferedImage image = new BufferedImage(rgb.length, 1, BufferedImage.TYPE_INT_RGB);
    for (int i = 0; i < rgb.length; i++) {
      image.setRGB(i, 0, rgb[i]);
    }
    Path file = dir.resolve("colours.png");
    ImageIO.write(image, "png", file.toFile());
    return file;
  }

  private double[] read(Path file, Encoding encoding) throws IOException {
    try (Raster raster = RasterOpener.open(file, in(encoding), warnings)) {
      return raster.read(0, 0, raster.columns(), raster.rows());
    }
  }

  @Test
  void greyOf8And16Bits_isInMetres() throws IOException {
    for (int type : new int[] {BufferedImage.TYPE_BYTE_GRAY, BufferedImage.TYPE_USHORT_GRAY}) {
      BufferedImage image = new BufferedImage(2, 1, type);
      int high = type == BufferedImage.TYPE_BYTE_GRAY ? 255 : 65535;
      image.getRaster().setSample(1, 0, 0, high);
      Path file = dir.resolve("grey.png");
      ImageIO.write(image, "png", file.toFile());
      assertArrayEquals(new double[] {0, high}, read(file, Encoding.AUTO), 0);
      try (Raster raster = Rasters.open(file, warnings)) {
        assertFalse(raster.head().placed());
        assertEquals(1, raster.toGround().xCol(), 0);
      }
    }
  }

  /** 8848.86 m is (162, 144, 220) and decodes to 8848.859375; sea level is (128, 0, 0). */
  @Test
  void rgb256_decodes() throws IOException {
    assertArrayEquals(
        new double[] {8848.859375, 0, Double.NaN},
        read(colours(0xa290dc, 0x800000, 0), Encoding.RGB_256),
        0);
  }

  /** 0 m is (1, 134, 160); 1234.5 m is (1, 182, 217). */
  @Test
  void terrainRgb_decodes() throws IOException {
    assertArrayEquals(
        new double[] {0, 1234.5, Double.NaN},
        read(colours(0x0186a0, 0x01b6d9, 0), Encoding.RGB_TENTH),
        0);
  }

  @Test
  void encoding_isFoundOutAloud() throws IOException {
    assertArrayEquals(new double[] {0, 2.5}, read(colours(0x800000, 0x800280), Encoding.AUTO), 0);
    assertEquals("png-colour", warnings.list().get(0).code());
    assertTrue(warnings.list().get(0).message().contains("terrain.encoding: rgb-256"));
    assertArrayEquals(new double[] {0, 2.5}, read(colours(0x0186a0, 0x0186b9), Encoding.AUTO), 0);
  }

  @Test
  void pictures_areRefusedAndGreyOnesReadAloud() throws IOException {
    Path picture = colours(0x1020ff, 0xff3010, 0x30ff20, 0x804020);
    assertTrue(
        assertThrows(InputFault.class, () -> read(picture, Encoding.AUTO))
            .getMessage()
            .contains("terrain.encoding"));
    assertArrayEquals(new double[] {16, 200}, read(colours(0x101010, 0xc8c8c8), Encoding.AUTO), 0);
    assertEquals("png-colour", warnings.list().get(0).code());
  }

  @Test
  void palette_isRefused() throws IOException {
    BufferedImage image = new BufferedImage(2, 2, BufferedImage.TYPE_BYTE_INDEXED);
    Path file = dir.resolve("palette.png");
    ImageIO.write(image, "png", file.toFile());
    assertTrue(
        assertThrows(InputFault.class, () -> read(file, Encoding.AUTO))
            .getMessage()
            .contains("palette"));
  }

  /** World files by their three usual endings, in either case. */
  @Test
  void worldFiles_haveSeveralNames() throws IOException {
    Path file = write(dir);
    String numbers = Files.readString(dir.resolve("ground.pgw"));
    for (String ending : new String[] {"pgw", "pngw", "wld", "PGW"}) {
      for (String old : new String[] {"pgw", "pngw", "wld", "PGW"}) {
        Files.deleteIfExists(dir.resolve("ground." + old));
      }
      Files.writeString(dir.resolve("ground." + ending), numbers.replace("\n", "\r\n"));
      try (Raster raster = RasterOpener.open(file, in(Encoding.AUTO), warnings)) {
        assertEquals(1000, raster.toGround().x(0, 0), 1e-9, ending);
        assertTrue(raster.head().placed(), ending);
      }
    }
  }

  private static TerrainOptions.RasterSpec in(Encoding encoding) {
    return new TerrainOptions.RasterSpec("", TerrainOptions.Unit.FROM_FILE, null, encoding, null);
  }
}
