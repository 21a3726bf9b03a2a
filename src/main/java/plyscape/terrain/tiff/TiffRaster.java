package plyscape.terrain.tiff;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.files.InputCache;
import plyscape.terrain.crs.GroundCrs;
import plyscape.terrain.crs.LinearUnit;
import plyscape.terrain.crs.ProjectionFile;
import plyscape.terrain.raster.Affine;
import plyscape.terrain.raster.Raster;
import plyscape.terrain.raster.RasterHead;
import plyscape.terrain.raster.RasterLimits;
import plyscape.terrain.raster.WorldFile;

/**
 * Reads GeoTIFF. Only the tiles or strips of a window are read. The cells are unpacked by {@link
 * TiffBlocks} where it knows their packing, and else by the reader that comes with GeoTools, which
 * also puts a CRS together that the file spells out in keys.
 */
public final class TiffRaster implements Raster {

  private static final int ROWS_AT_ONCE = 64;
  private static final int MOST_CELLS_AT_ONCE = 1 << 24;

  /** Overviews and their masks come to about two dozen; more isn't looked at. */
  private static final int MOST_IMAGES_SEEN = 64;

  private final Path file;
  private final FileChannel channel;
  private final TiffBlocks blocks;
  private final TiffLibrary library;
  private final TiffMask mask;
  private final RasterHead head;
  private final double metresPerValue;
  private final boolean unitStated;
  private final String unknownUnit;

  private TiffRaster(Path file, FileChannel channel, boolean classes, Warnings warnings)
      throws IOException {
    this.file = file;
    this.channel = channel;
    List<TiffTags> images = TiffTags.images(channel, Place.file(file.toString()), MOST_IMAGES_SEEN);
    TiffTags tags = images.get(0);
    int columns = tags.number(TiffTags.WIDTH, 0);
    int rows = tags.number(TiffTags.HEIGHT, 0);
    if (columns < 1 || rows < 1) {
      throw new InputFault(
          tags.place(),
          "it is " + columns + " x " + rows + " cells",
          "check that the file is whole");
    }
    RasterLimits.requireSize(tags.place(), columns, rows);
    TiffCells cells = TiffCells.of(tags, classes);
    this.blocks = TiffBlocks.of(channel, tags, cells, 0, InputCache.of(List.of(file)));
    this.library = blocks == null ? TiffLibrary.open(file, tags, cells) : null;
    this.mask = TiffMask.of(channel, images, cells, file);
    warnOfMore(images, warnings);
    GeoKeys keys = new GeoKeys(tags);
    this.head = head(keys, columns, rows, warnings);
    boolean named = !cells.unit().isBlank();
    this.unknownUnit = named && Double.isNaN(LinearUnit.named(cells.unit())) ? cells.unit() : "";
    this.unitStated = unknownUnit.isEmpty() && (named || keys.verticalUnitStated());
    this.metresPerValue =
        cells.metresPerValue() != 1 ? cells.metresPerValue() : keys.verticalMetres();
  }

  private void warnOfMore(List<TiffTags> images, Warnings warnings) {
    long more = images.stream().skip(1).filter(TiffRaster::whole).count();
    if (more > 0) {
      warnings.add(
          "more-images",
          "the file has " + (more + 1) + " images of its own; the first one is read",
          file.getFileName().toString());
    }
  }

  private RasterHead head(GeoKeys keys, int columns, int rows, Warnings warnings)
      throws IOException {
    Affine inFile = keys.toGround();
    Affine found = inFile != null ? inFile : WorldFile.beside(file);
    GroundCrs crsInFile = keys.crs(file);
    GroundCrs beside =
        crsInFile.kind() != GroundCrs.Kind.NONE ? crsInFile : ProjectionFile.beside(file, warnings);
    return new RasterHead(
        file.getFileName().toString(),
        columns,
        rows,
        found != null ? found : Affine.northUp(0, rows, 1, 1),
        found != null ? RasterHead.Origin.FILE : RasterHead.Origin.NONE,
        beside.kind() != GroundCrs.Kind.NONE ? beside : crsInFile);
  }

  /** Whether an image is neither a smaller copy (1) nor a mask (4) of another. */
  private static boolean whole(TiffTags image) {
    return (image.number(TiffTags.SUBFILE_TYPE, 0) & 5) == 0;
  }

  /**
   * Opens a file and reads its tags, but no cells.
   *
   * @param classes read a palette as the numbers of its colours
   */
  public static Raster open(Path file, boolean classes, Warnings warnings) throws IOException {
    FileChannel channel = FileChannel.open(file, StandardOpenOption.READ);
    try {
      return new TiffRaster(file, channel, classes, warnings);
    } catch (InputFault e) {
      channel.close();
      throw e;
    } catch (IOException | RuntimeException e) {
      channel.close();
      throw RasterLimits.unreadable(file, e);
    }
  }

  @Override
  public RasterHead head() {
    return head;
  }

  @Override
  public double metresPerValue() {
    return metresPerValue;
  }

  @Override
  public boolean unitStated() {
    return unitStated;
  }

  @Override
  public String unknownUnit() {
    return unknownUnit;
  }

  @Override
  public int rowsAtOnce() {
    int high = blocks != null ? blocks.blockHigh() : rows();
    int least = high * ((ROWS_AT_ONCE + high - 1) / high);
    return Math.max(1, Math.min(least, MOST_CELLS_AT_ONCE / columns()));
  }

  @Override
  public double[] read(int column, int row, int wide, int high) {
    try {
      double[] values =
          blocks != null
              ? blocks.read(column, row, wide, high)
              : library.read(column, row, wide, high);
      if (mask != null) {
        mask.apply(column, row, wide, high, values);
      }
      return values;
    } catch (IOException | RuntimeException e) {
      throw RasterLimits.unreadable(file, e);
    }
  }

  @Override
  public void close() throws IOException {
    if (library != null) {
      library.close();
    }
    if (mask != null) {
      mask.close();
    }
    channel.close();
  }
}
