package plyscape.terrain.format;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.terrain.crs.CrsLookup;
import plyscape.terrain.crs.GroundCrs;
import plyscape.terrain.raster.Affine;
import plyscape.terrain.raster.Raster;
import plyscape.terrain.raster.RasterHead;
import plyscape.terrain.raster.RasterLimits;

/**
 * Reads an SRTM height tile: no head, signed 16-bit big-endian metres, north row first, -32768 for
 * void. The name says which degree square it is by its south-west corner (N34W119); the posts of
 * the first and last row and column stand on the degree lines, so that the cells stick out by half
 * a cell.
 */
public final class HgtRaster implements Raster {

  private static final Pattern NAME =
      Pattern.compile("(?i)^([NS])(\\d\\d)([EW])(\\d\\d\\d).*\\.hgt$");
  private static final short VOID = -32768;

  private final Path file;
  private final FileChannel channel;
  private final RasterHead head;

  private HgtRaster(Path file, FileChannel channel, int posts, int west, int south) {
    this.file = file;
    this.channel = channel;
    double cell = 1.0 / (posts - 1);
    this.head =
        new RasterHead(
            file.getFileName().toString(),
            posts,
            posts,
            Affine.northUp(west - cell / 2, south + 1 + cell / 2, cell, cell),
            RasterHead.Origin.FILE,
            new GroundCrs(CrsLookup.WGS_84, GroundCrs.Kind.GEOGRAPHIC, 1));
  }

  /** Whether a file has the format's ending. */
  public static boolean named(Path file) {
    return file.getFileName().toString().toLowerCase(java.util.Locale.ROOT).endsWith(".hgt");
  }

  /** Opens a tile. */
  public static Raster open(Path file) throws IOException {
    Matcher name = NAME.matcher(file.getFileName().toString());
    Place place = Place.file(file.toString());
    if (!name.matches()) {
      throw new InputFault(
          place,
          "the name of an HGT tile must say where it lies",
          "name it like N55W003.hgt, by its south-west corner");
    }
    int south = Integer.parseInt(name.group(2)) * (name.group(1).equalsIgnoreCase("S") ? -1 : 1);
    int west = Integer.parseInt(name.group(4)) * (name.group(3).equalsIgnoreCase("W") ? -1 : 1);
    if (south < -90 || south > 89 || west < -180 || west > 179) {
      throw new InputFault(
          place, "there is no degree square " + name.group(), "name it like N55W003.hgt");
    }
    long bytes = Files.size(file);
    int posts = bytes == 2L * 1201 * 1201 ? 1201 : bytes == 2L * 3601 * 3601 ? 3601 : 0;
    if (posts == 0) {
      throw new InputFault(
          place,
          "it has " + bytes + " bytes",
          "expected 2884802 (3 arc-seconds) or 25934402 (1 arc-second)");
    }
    return new HgtRaster(file, FileChannel.open(file, StandardOpenOption.READ), posts, west, south);
  }

  @Override
  public RasterHead head() {
    return head;
  }

  @Override
  public double[] read(int column, int row, int wide, int high) {
    try {
      return posts(column, row, wide, high);
    } catch (IOException e) {
      throw RasterLimits.unreadable(file, e);
    }
  }

  private double[] posts(int column, int row, int wide, int high) throws IOException {
    double[] out = new double[Math.multiplyExact(wide, high)];
    ByteBuffer line = ByteBuffer.allocate(2 * wide);
    for (int r = 0; r < high; r++) {
      line.clear();
      long at = 2L * ((long) (row + r) * columns() + column);
      while (line.hasRemaining()) {
        if (channel.read(line, at + line.position()) < 0) {
          throw new IOException("it ends early");
        }
      }
      line.flip();
      for (int c = 0; c < wide; c++) {
        short value = line.getShort();
        out[r * wide + c] = value == VOID ? Double.NaN : value;
      }
    }
    return out;
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
