package plyscape.terrain;

import it.geosolutions.imageioimpl.plugins.tiff.TIFFImageMetadata;
import it.geosolutions.imageioimpl.plugins.tiff.TIFFImageReaderSpi;
import java.awt.Rectangle;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.FileImageInputStream;
import javax.imageio.stream.ImageInputStream;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;

/**
 * Reads GeoTIFF through the TIFF reader that comes with GeoTools; windows are read straight from the file, so that only
 * the tiles or strips of the window are decoded.
 */
final class TiffRaster implements Raster {

  private final Path file;
  private final ImageInputStream stream;
  private final ImageReader reader;
  private final TiffCells cells;
  private final Affine toGround;
  private final GroundCrs crs;
  private final int columns;
  private final int rows;

  private TiffRaster(Path file, ImageInputStream stream, ImageReader reader) throws IOException {
    this.file = file;
    this.stream = stream;
    this.reader = reader;
    this.columns = reader.getWidth(0);
    this.rows = reader.getHeight(0);
    TIFFImageMetadata metadata = (TIFFImageMetadata) reader.getImageMetadata(0);
    TiffTags tags = new TiffTags(metadata, Place.file(file.toString()));
    this.cells = TiffCells.of(tags);
    GeoKeys keys = new GeoKeys(tags);
    this.toGround = keys.toGround(rows);
    this.crs = keys.crs(metadata);
  }

  /** Opens a file and reads its tags, but no cells. */
  static Raster open(Path file, Warnings warnings) throws IOException {
    ImageInputStream stream = new FileImageInputStream(file.toFile());
    ImageReader reader = new TIFFImageReaderSpi().createReaderInstance();
    try {
      reader.setInput(stream);
      return new TiffRaster(file, stream, reader);
    } catch (InputFault e) {
      stream.close();
      throw e;
    } catch (IOException | RuntimeException e) {
      stream.close();
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
  public int rowsAtOnce() {
    try {
      return Math.max(1, Math.min(reader.getTileHeight(0), rows));
    } catch (IOException e) {
      throw RasterOpener.unreadable(file, e);
    }
  }

  @Override
  public double[] read(int column, int row, int wide, int high) {
    try {
      ImageReadParam param = reader.getDefaultReadParam();
      param.setSourceRegion(new Rectangle(column, row, wide, high));
      return cells.values(reader.read(0, param).getRaster(), wide, high);
    } catch (IOException | RuntimeException e) {
      throw RasterOpener.unreadable(file, e);
    }
  }

  @Override
  public void close() throws IOException {
    reader.dispose();
    stream.close();
  }
}
