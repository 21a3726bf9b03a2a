package plyscape.terrain;

import java.awt.image.Raster;
import plyscape.fault.InputFault;

/**
 * Turns the samples of a TIFF into elevations.
 *
 * @param type sample type
 * @param nodata value that means none, already rounded to the sample type; NaN when there is none
 */
record TiffCells(SampleType type, double nodata) {

  /** Type of a sample. */
  enum SampleType {
    INT8,
    UINT8,
    INT16,
    UINT16,
    INT32,
    UINT32,
    FLOAT32,
    FLOAT64
  }

  /** Reads what the tags say; a file that isn't one band of numbers is an input fault. */
  static TiffCells of(TiffTags tags) {
    int bands = tags.number(TiffTags.SAMPLES_PER_PIXEL, 1);
    if (bands != 1) {
      throw new InputFault(tags.place(), "it has " + bands + " bands", "expected one band of elevations");
    }
    if (tags.number(TiffTags.PHOTOMETRIC, 1) == 3) {
      throw new InputFault(
          tags.place(), "its cells are colours of a palette, not elevations", "expected one band of elevations");
    }
    SampleType type = type(tags);
    return new TiffCells(type, nodata(tags, type));
  }

  private static SampleType type(TiffTags tags) {
    int bits = tags.number(TiffTags.BITS_PER_SAMPLE, 1);
    int format = tags.number(TiffTags.SAMPLE_FORMAT, 1);
    return switch (format * 100 + bits) {
      case 108 -> SampleType.UINT8;
      case 116 -> SampleType.UINT16;
      case 132 -> SampleType.UINT32;
      case 208 -> SampleType.INT8;
      case 216 -> SampleType.INT16;
      case 232 -> SampleType.INT32;
      case 332 -> SampleType.FLOAT32;
      case 364 -> SampleType.FLOAT64;
      default ->
          throw new InputFault(
              tags.place(), "samples of " + bits + " bits in format " + format + " can't be read",
              "convert it to 16-bit integers or 32-bit floats");
    };
  }

  private static double nodata(TiffTags tags, SampleType type) {
    String text = tags.text(TiffTags.GDAL_NODATA);
    // NaN and infinities are void anyway, with or without a tag.
    if (text.isEmpty() || text.matches("(?i)[-+]?(nan|inf(inity)?|1\\.#.*)")) {
      return Double.NaN;
    }
    try {
      double value = Double.parseDouble(text);
      return type == SampleType.FLOAT32 ? (float) value : value;
    } catch (NumberFormatException e) {
      throw new InputFault(tags.place(), "nodata value '" + text + "' is not a number", "mend the file's tag 42113", e);
    }
  }

  /** Elevations of a window, NaN for void. */
  double[] values(Raster raster, int columns, int rows) {
    double[] out = raster.getSamples(raster.getMinX(), raster.getMinY(), columns, rows, 0, (double[]) null);
    for (int i = 0; i < out.length; i++) {
      double value = sign(out[i]);
      out[i] = value == nodata || !Double.isFinite(value) ? Double.NaN : value;
    }
    return out;
  }

  /** Java's rasters take bytes as unsigned and ints as signed, whatever the file means. */
  private double sign(double value) {
    return switch (type) {
      case INT8 -> (byte) (int) value;
      case UINT32 -> value < 0 ? value + 4294967296.0 : value;
      default -> value;
    };
  }
}
