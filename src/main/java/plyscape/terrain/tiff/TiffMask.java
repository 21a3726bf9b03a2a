package plyscape.terrain.tiff;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import plyscape.fault.Place;
import plyscape.files.InputCache;

/**
 * Tells which cells of a TIFF have no value by a picture of their own: a transparency sample beside
 * each elevation (TIFF 6.0, section 18), a mask image in the file (section 8, NewSubfileType 4), or
 * one in a file beside it with {@code .msk} added to its name. A cell is void where that is 0.
 */
final class TiffMask {

  private static final int TRANSPARENCY_MASK = 4;

  private final TiffBlocks blocks;
  private final FileChannel own;

  private TiffMask(TiffBlocks blocks, FileChannel own) {
    this.blocks = blocks;
    this.own = own;
  }

  /** Whether a file has an elevation and a transparency sample for each cell. */
  static boolean alpha(TiffTags tags) {
    long[] extra = tags.longs(TiffTags.EXTRA_SAMPLES);
    return tags.number(TiffTags.SAMPLES_PER_PIXEL, 1) == 2
        && extra.length == 1
        && (extra[0] == 1 || extra[0] == 2)
        && TiffPacking.of(tags.number(TiffTags.COMPRESSION, 1)) != null;
  }

  /**
   * The mask of a file's first image.
   *
   * @param images the file's images
   * @param cells how its samples are taken
   * @return null when there is none
   */
  static TiffMask of(FileChannel channel, List<TiffTags> images, TiffCells cells, Path file)
      throws IOException {
    TiffTags first = images.get(0);
    if (alpha(first)) {
      return new TiffMask(
          TiffBlocks.of(channel, first, cells.bare(), 1, InputCache.Source.NONE), null);
    }
    for (TiffTags image : images.subList(1, images.size())) {
      // A mask of an overview has bit 1 set too, and another size.
      if (image.number(TiffTags.SUBFILE_TYPE, 0) == TRANSPARENCY_MASK && sameSize(first, image)) {
        return new TiffMask(blocks(channel, image), null);
      }
    }
    Path beside = file.resolveSibling(file.getFileName() + ".msk");
    return Files.isRegularFile(beside) ? beside(beside, first) : null;
  }

  private static TiffMask beside(Path file, TiffTags of) throws IOException {
    FileChannel channel = FileChannel.open(file, StandardOpenOption.READ);
    try {
      TiffTags tags = TiffTags.read(channel, Place.file(file.toString()));
      if (sameSize(of, tags)) {
        return new TiffMask(blocks(channel, tags), channel);
      }
      throw new IOException("its mask " + file.getFileName() + " has another size");
    } catch (IOException | RuntimeException e) {
      channel.close();
      throw e;
    }
  }

  private static TiffBlocks blocks(FileChannel channel, TiffTags tags) throws IOException {
    TiffBlocks blocks =
        TiffBlocks.of(channel, tags, TiffCells.of(tags, true).bare(), 0, InputCache.Source.NONE);
    if (blocks == null) {
      throw new IOException(
          "its mask is packed as " + TiffPacking.name(tags.number(TiffTags.COMPRESSION, 1)));
    }
    return blocks;
  }

  private static boolean sameSize(TiffTags a, TiffTags b) {
    return a.number(TiffTags.WIDTH, 0) == b.number(TiffTags.WIDTH, 0)
        && a.number(TiffTags.HEIGHT, 0) == b.number(TiffTags.HEIGHT, 0);
  }

  /** Makes the values of a window NaN where the mask says so. */
  void apply(int column, int row, int wide, int high, double[] values) throws IOException {
    double[] shown = blocks.read(column, row, wide, high);
    for (int i = 0; i < values.length; i++) {
      if (shown[i] == 0) {
        values[i] = Double.NaN;
      }
    }
  }

  /** Lets go of a mask file beside the raster. */
  void close() throws IOException {
    if (own != null) {
      own.close();
    }
  }
}
