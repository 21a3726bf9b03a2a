package plyscape.terrain;

import java.awt.image.Raster;
import java.awt.image.RenderedImage;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;

/**
 * Reads an 8- or 16-bit grey PNG: a sample is an elevation in metres, the first row is the north, cells are squares of 1 m.
 * Fully transparent cells are void.
 */
final class PngRaster {

  private PngRaster() {}

  /** Reads a whole file. */
  static plyscape.terrain.Raster open(Path file, Warnings warnings) throws IOException {
    ImageIO.setUseCache(false);
    RenderedImage image = ImageIO.read(file.toFile());
    if (image == null) {
      throw new InputFault(Place.file(file.toString()), "no image in it", "use a grey PNG");
    }
    Raster raster = image.getData();
    int bands = raster.getNumBands();
    if (bands > 2 || image.getColorModel() instanceof java.awt.image.IndexColorModel) {
      throw new InputFault(
          Place.file(file.toString()), "a colour image, not elevations", "use a grey PNG of 8 or 16 bits");
    }
    int columns = raster.getWidth();
    int rows = raster.getHeight();
    double[] values = new double[Math.multiplyExact(columns, rows)];
    raster.getSamples(0, 0, columns, rows, 0, values);
    if (bands == 2) {
      double[] alpha = new double[values.length];
      raster.getSamples(0, 0, columns, rows, 1, alpha);
      for (int i = 0; i < values.length; i++) {
        values[i] = alpha[i] == 0 ? Double.NaN : values[i];
      }
    }
    return new HeldRaster(
        file.getFileName().toString(), columns, rows, Affine.northUp(0, rows, 1, 1), GroundCrs.NONE, values);
  }
}
