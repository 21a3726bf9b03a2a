package plyscape.terrain;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import plyscape.fault.InputFault;
import plyscape.fault.Place;

/**
 * Reads GeoTIFF. Only the tiles or strips of a window are read. The cells are unpacked by {@link
 * TiffBlocks} where it knows their packing, and else by the reader that comes with GeoTools, which
 * also puts a CRS together that the file spells out in keys.
 */
final class TiffRaster implements Raster {

  private static final int ROWS_AT_ONCE = 64;
  private static final int MOST_CELLS_AT_ONCE = 1 << 24;

  private final Path file;
  private final FileChannel channel;
  private final int columns;
  private final int rows;
  private final TiffBlocks blocks;
  private final TiffLibrary library;
  private final Affine toGround;
  private final boolean placed;
  private final GroundCrs crs;
  private final double metresPerValue;

  private TiffRaster(Path file, FileChannel channel, boolean classes) throws IOException {
    this.file = file;
    this.channel = channel;
    TiffTags tags = TiffTags.read(channel, Place.file(file.toString()));
    this.columns = tags.number(TiffTags.WIDTH, 0);
    this.rows = tags.number(TiffTags.HEIGHT, 0);
    if (columns < 1 || rows < 1 || (long) columns * rows > Integer.MAX_VALUE - 8) {
      throw new InputFault(
          tags.place(), "it is " + columns + " x " + rows + " cells", "use a smaller raster");
    }
    TiffCells cells = TiffCells.of(tags, classes);
    this.blocks = TiffBlocks.of(channel, tags, cells, columns, rows);
    this.library = blocks == null ? TiffLibrary.open(file, cells) : null;
    GeoKeys keys = new GeoKeys(tags);
    Affine inFile = keys.toGround();
    Affine found = inFile != null ? inFile : WorldFile.beside(file);
    this.placed = found != null;
    this.toGround = placed ? found : Affine.northUp(0, rows, 1, 1);
    GroundCrs crsInFile = keys.crs(file);
    this.crs = crsInFile.kind() != GroundCrs.Kind.NONE ? crsInFile : ProjectionFile.beside(file);
    this.metresPerValue =
        cells.metresPerValue() != 1 ? cells.metresPerValue() : keys.verticalMetres();
  }

  /** Opens a file and reads its tags, but no cells. */
  static Raster open(Path file) throws IOException {
    return open(file, false);
  }

  /** The same; for classes a palette is read as the numbers of its colours. */
  static Raster open(Path file, boolean classes) throws IOException {
    FileChannel channel = FileChannel.open(file, StandardOpenOption.READ);
    try {
      return new TiffRaster(file, channel, classes);
    } catch (InputFault e) {
      channel.close();
      throw e;
    } catch (IOException | RuntimeException e) {
      channel.close();
      throw RasterOpener.unreadable(file, e);
    }
  }

  @Override
  public String name() {
    return file.getFileName().toString();
  }

  @Override
  public int columns() {
    return columns;
  }

  @Override
  public int rows() {
    return rows;
  }

  @Override
  public Affine toGround() {
    return toGround;
  }

  @Override
  public GroundCrs crs() {
    return crs;
  }

  @Override
  public boolean placed() {
    return placed;
  }

  @Override
  public double metresPerValue() {
    return metresPerValue;
  }

  @Override
  public int rowsAtOnce() {
    int high = blocks != null ? blocks.blockHigh() : rows;
    int least = high * ((ROWS_AT_ONCE + high - 1) / high);
    return Math.max(1, Math.min(least, MOST_CELLS_AT_ONCE / columns));
  }

  @Override
  public double[] read(int column, int row, int wide, int high) {
    try {
      return blocks != null
          ? blocks.read(column, row, wide, high)
          : library.read(column, row, wide, high);
    } catch (IOException | RuntimeException e) {
      throw RasterOpener.unreadable(file, e);
    }
  }

  @Override
  public void close() throws IOException {
    if (library != null) {
      library.close();
    }
    channel.close();
  }
}
