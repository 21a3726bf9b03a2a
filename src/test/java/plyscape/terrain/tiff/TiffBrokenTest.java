package plyscape.terrain.tiff;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.terrain.Rasters;
import plyscape.terrain.raster.Raster;

/** Files of which some blocks are cut off or garbled: the message names the first that was met. */
class TiffBrokenTest {

  private static final int SIDE = 40;
  private static final int TILE_OFFSETS = 324;
  private static final int STRIP_OFFSETS = 273;

  @TempDir Path dir;

  private static TiffFixture ground() {
    return new TiffFixture(SIDE, SIDE, IntStream.range(0, SIDE * SIDE).asDoubleStream().toArray())
        .placed(0, 1000, 10, 10);
  }

  /** Moves some blocks behind the end of the file, as if it had been cut off. */
  private static Path without(Path file, int offsetsTag, int... blocks) throws IOException {
    byte[] bytes = Files.readAllBytes(file);
    for (int block : blocks) {
      ByteBuffer.wrap(bytes)
          .order(ByteOrder.LITTLE_ENDIAN)
          .putInt(entry(bytes, offsetsTag, block), bytes.length - 3);
    }
    return Files.write(file, bytes);
  }

  /** Where a number of a LONG tag of several values stands (TIFF 6.0, section 2). */
  private static int entry(byte[] bytes, int tag, int index) {
    ByteBuffer b = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    int at = b.getInt(4) + 2;
    while ((b.getShort(at) & 0xffff) != tag) {
      at += 12;
    }
    return b.getInt(at + 8) + 4 * index;
  }

  private static String message(Path file) {
    return assertThrows(
            InputFault.class,
            () -> {
              try (Raster raster = Rasters.open(file, new Warnings())) {
                raster.read(0, 0, SIDE, SIDE);
              }
            })
        .getMessage();
  }

  @Test
  void cutOffTile_isNamedByItsCells() throws IOException {
    Path file = without(ground().tiled(16).write(dir.resolve("t.tif")), TILE_OFFSETS, 4, 8);
    for (int time = 0; time < 20; time++) { // several threads, always the same message
      String message = message(file);
      assertTrue(message.contains("t.tif"), message);
      assertTrue(
          message.contains("tile 4 (columns 16 to 31, rows 16 to 31): the file ends"), message);
    }
    // What the broken tiles don't hold can still be read.
    try (Raster raster = Rasters.open(file, new Warnings())) {
      assertArrayEquals(new double[] {14, 15, 54, 55}, raster.read(14, 0, 2, 2), "cells of tile 0");
    }
  }

  @Test
  void lastTile_endsWithTheRaster() throws IOException {
    Path file = without(ground().tiled(16).write(dir.resolve("t.tif")), TILE_OFFSETS, 8);
    String message = message(file);
    assertTrue(message.contains("tile 8 (columns 32 to 39, rows 32 to 39)"), message);
  }

  @Test
  void cutOffStrip_isNamedByItsRows() throws IOException {
    Path file = without(ground().strips(16).write(dir.resolve("s.tif")), STRIP_OFFSETS, 2);
    String message = message(file);
    assertTrue(message.contains("strip 2 (rows 32 to 39): the file ends"), message);
  }

  @Test
  void garbledTile_isNamed() throws IOException {
    Path file = ground().tiled(16).compressed(8, 1).write(dir.resolve("g.tif"));
    byte[] bytes = Files.readAllBytes(file);
    int at =
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).getInt(entry(bytes, TILE_OFFSETS, 3));
    assertEquals(0x78, bytes[at]); // a Deflate stream's first byte (RFC 1950)
    bytes[at] = 0;
    Files.write(file, bytes);
    String message = message(file);
    assertTrue(
        message.contains("tile 3 (columns 0 to 15, rows 16 to 31): its packed bytes are garbled"),
        message);
  }
}
