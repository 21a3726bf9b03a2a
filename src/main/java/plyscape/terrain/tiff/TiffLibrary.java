package plyscape.terrain.tiff;

import it.geosolutions.imageioimpl.plugins.tiff.TIFFImageReaderSpi;
import java.awt.Rectangle;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.stream.FileImageInputStream;
import javax.imageio.stream.ImageInputStream;
import plyscape.fault.InputFault;
import plyscape.terrain.crs.CrsLookup;

/**
 * A TIFF in the hands of the reader that comes with GeoTools: for rare packings, and for CRS
 * spelled out in keys.
 */
final class TiffLibrary {

  private final TiffCells cells;
  private final ImageInputStream stream;
  private final ImageReader reader;

  private TiffLibrary(TiffCells cells, ImageInputStream stream, ImageReader reader) {
    this.cells = cells;
    this.stream = stream;
    this.reader = reader;
  }

  /** Opens the cells of a file. */
  static TiffLibrary open(Path file, TiffTags tags, TiffCells cells) throws IOException {
    CrsLookup.hushLibraries();
    ImageInputStream stream = new FileImageInputStream(file.toFile());
    ImageReader reader = new TIFFImageReaderSpi().createReaderInstance();
    reader.setInput(stream);
    TiffLibrary library = new TiffLibrary(cells, stream, reader);
    try {
      library.read(0, 0, 1, 1);
      return library;
    } catch (IOException | RuntimeException e) {
      library.close();
      throw new InputFault(
          cells.place(),
          "its packing, "
              + TiffPacking.name(tags.number(TiffTags.COMPRESSION, 1))
              + ", can't be read",
          "pack it with Deflate, LZW, PackBits, Zstandard or not at all",
          e);
    }
  }

  /** The metadata of a file's first image. */
  static IIOMetadata metadata(Path file) throws IOException {
    ImageReader reader = new TIFFImageReaderSpi().createReaderInstance();
    try (ImageInputStream stream = new FileImageInputStream(file.toFile())) {
      reader.setInput(stream);
      return reader.getImageMetadata(0);
    } finally {
      reader.dispose();
    }
  }

  double[] read(int column, int row, int wide, int high) throws IOException {
    ImageReadParam param = reader.getDefaultReadParam();
    param.setSourceRegion(new Rectangle(column, row, wide, high));
    return cells.values(reader.read(0, param).getRaster(), wide, high);
  }

  void close() throws IOException {
    reader.dispose();
    stream.close();
  }
}
