package plyscape.terrain.format;

import java.awt.image.IndexColorModel;
import java.awt.image.RenderedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Iterator;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.stream.FileImageInputStream;
import javax.imageio.stream.ImageInputStream;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.job.TerrainOptions.Encoding;
import plyscape.terrain.crs.ProjectionFile;
import plyscape.terrain.raster.Affine;
import plyscape.terrain.raster.HeldRaster;
import plyscape.terrain.raster.Raster;
import plyscape.terrain.raster.RasterHead;
import plyscape.terrain.raster.RasterLimits;
import plyscape.terrain.raster.WorldFile;

/**
 * Reads a PNG: grey of up to 16 bits, a sample being an elevation in metres, or colours in one of
 * the two common encodings. The first row is the north; a world file and a .prj beside it place it,
 * else cells are squares of 1 m. Fully transparent cells are void.
 */
public final class PngRaster {

  /** Deflate can't pack more than this many bytes into one (RFC 1951: 258 bytes in 2 bits). */
  private static final double MOST_PACKED = 1032;

  private PngRaster() {}

  /** Reads a whole file. */
  public static Raster open(Path file, Encoding encoding, Warnings warnings) throws IOException {
    RenderedImage image = image(file);
    int columns = image.getWidth();
    int rows = image.getHeight();
    Place place = Place.file(file.toString());
    if (image.getColorModel() instanceof IndexColorModel) {
      throw new InputFault(
          place,
          "its cells are colours of a palette, not elevations",
          "use a grey PNG, or one in an elevation encoding");
    }
    double[][] bands = bands(image.getData());
    double[] values =
        PngColours.elevations(
            bands, image.getColorModel().getComponentSize(0), encoding, columns, place, warnings);
    if (bands.length % 2 == 0) {
      double[] alpha = bands[bands.length - 1];
      for (int i = 0; i < values.length; i++) {
        values[i] = alpha[i] == 0 ? Double.NaN : values[i];
      }
    }
    Affine world = WorldFile.beside(file);
    return new HeldRaster(
        new RasterHead(
            file.getFileName().toString(),
            columns,
            rows,
            world != null ? world : Affine.northUp(0, rows, 1, 1),
            world != null ? RasterHead.Origin.FILE : RasterHead.Origin.NONE,
            ProjectionFile.beside(file, warnings)),
        values);
  }

  private static RenderedImage image(Path file) throws IOException {
    Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName("png");
    ImageReader reader = readers.next();
    try (ImageInputStream in = new FileImageInputStream(file.toFile())) {
      reader.setInput(in);
      checkSize(file, reader);
      return reader.read(0);
    } catch (RuntimeException e) {
      throw e instanceof plyscape.fault.Fault ? e : RasterLimits.unreadable(file, e);
    } finally {
      reader.dispose();
    }
  }

  private static void checkSize(Path file, ImageReader reader) throws IOException {
    ImageTypeSpecifier type = reader.getRawImageType(0);
    int bands = type == null ? 3 : type.getNumBands();
    long columns = reader.getWidth(0);
    long rows = reader.getHeight(0);
    // The samples as read, as numbers, and for colours what they mean in either encoding.
    int cellBytes = 2 * bands + Double.BYTES * (bands <= 2 ? bands : bands + 2);
    HeldRaster.checkRoom(file, columns, rows, cellBytes);
    double bits = type == null ? 1 : (double) columns * type.getBitsPerBand(0) * bands;
    HeldRaster.checkLength(file, columns, rows, rows * (1 + bits / 8) / MOST_PACKED);
  }

  private static double[][] bands(java.awt.image.Raster raster) {
    double[][] out = new double[raster.getNumBands()][];
    for (int band = 0; band < out.length; band++) {
      out[band] =
          raster.getSamples(0, 0, raster.getWidth(), raster.getHeight(), band, (double[]) null);
    }
    return out;
  }
}
