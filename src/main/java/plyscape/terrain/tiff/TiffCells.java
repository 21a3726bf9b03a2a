package plyscape.terrain.tiff;

import java.awt.image.Raster;
import java.nio.ByteBuffer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.terrain.crs.LinearUnit;

/**
 * Turns the samples of a TIFF into elevations.
 *
 * @param place the file, for messages
 * @param type sample type
 * @param nodata value that means none, already rounded to the sample type; NaN when there is none
 * @param factor what a sample is multiplied by
 * @param offset what is then added
 * @param unit of elevations as the file names it, "" when it names none
 */
record TiffCells(
    Place place, SampleType type, double nodata, double factor, double offset, String unit) {

  private static final Pattern ITEM =
      Pattern.compile(
          "<Item\\s+name=\"(SCALE|OFFSET|UNITTYPE)\"[^>]*sample=\"0\"[^>]*>([^<]*)</Item>");

  /** Type of a sample. */
  @SuppressWarnings("ImmutableEnumChecker") // the getters hold nothing
  enum SampleType {
    INT8(1, ByteBuffer::get),
    UINT8(1, (samples, at) -> samples.get(at) & 0xff),
    INT16(2, ByteBuffer::getShort),
    UINT16(2, (samples, at) -> samples.getShort(at) & 0xffff),
    INT32(4, ByteBuffer::getInt),
    UINT32(4, (samples, at) -> samples.getInt(at) & 0xffffffffL),
    INT64(8, ByteBuffer::getLong),
    UINT64(8, (samples, at) -> unsigned(samples.getLong(at))),
    FLOAT32(4, ByteBuffer::getFloat),
    FLOAT64(8, ByteBuffer::getDouble);

    private final int bytes;
    private final Getter getter;

    SampleType(int bytes, Getter getter) {
      this.bytes = bytes;
      this.getter = getter;
    }

    /** Takes a sample at a byte position. */
    private interface Getter {
      double at(ByteBuffer samples, int position);
    }

    private static double unsigned(long bits) {
      return bits >= 0 ? bits : 2.0 * (bits >>> 1);
    }

    /** Bytes of a sample. */
    int bytes() {
      return bytes;
    }
  }

  /**
   * Reads what the tags say; a file that isn't one band of numbers is an input fault.
   *
   * @param classes take a palette's numbers as they are
   */
  static TiffCells of(TiffTags tags, boolean classes) {
    int bands = tags.number(TiffTags.SAMPLES_PER_PIXEL, 1);
    if (bands != 1 && !TiffMask.alpha(tags)) {
      boolean colours = bands <= 4 && tags.number(TiffTags.PHOTOMETRIC, 1) == 2;
      throw new InputFault(
          tags.place(),
          "it has "
              + bands
              + " bands of "
              + tags.number(TiffTags.BITS_PER_SAMPLE, 1)
              + " bits"
              + (colours ? " (red, green, blue: a picture)" : ""),
          "expected one band of elevations; write the wanted one to a file of its own");
    }
    if (!classes && tags.number(TiffTags.PHOTOMETRIC, 1) == 3) {
      throw new InputFault(
          tags.place(),
          "its cells are colours of a palette, not elevations",
          "expected one band of elevations");
    }
    SampleType type = type(tags);
    double factor = 1;
    double offset = 0;
    String unit = "";
    Matcher item = ITEM.matcher(tags.text(TiffTags.GDAL_METADATA));
    while (item.find()) {
      String text = item.group(2).strip();
      switch (item.group(1)) {
        case "SCALE" -> factor = number(text, "scale", tags);
        case "OFFSET" -> offset = number(text, "offset", tags);
        default -> unit = text;
      }
    }
    return new TiffCells(tags.place(), type, nodata(tags, type), factor, offset, unit);
  }

  private static SampleType type(TiffTags tags) {
    int bits = tags.number(TiffTags.BITS_PER_SAMPLE, 1);
    int format = tags.number(TiffTags.SAMPLE_FORMAT, 1);
    return switch (format * 100 + bits) {
      case 101, 102, 104 -> SampleType.UINT8;
      case 108 -> SampleType.UINT8;
      case 116 -> SampleType.UINT16;
      case 132 -> SampleType.UINT32;
      case 208 -> SampleType.INT8;
      case 216 -> SampleType.INT16;
      case 232 -> SampleType.INT32;
      case 164 -> SampleType.UINT64;
      case 264 -> SampleType.INT64;
      case 332 -> SampleType.FLOAT32;
      case 364 -> SampleType.FLOAT64;
      default ->
          throw new InputFault(
              tags.place(),
              "it has samples of "
                  + bits
                  + " bits, "
                  + switch (format) {
                    case 1, 2 -> "whole numbers";
                    case 3 -> "floats";
                    case 5, 6 -> "complex numbers";
                    default -> "of no known format";
                  }
                  + ", which can't be read",
              "convert it to 16-bit integers or 32-bit floats");
    };
  }

  private static double nodata(TiffTags tags, SampleType type) {
    String text = tags.text(TiffTags.GDAL_NODATA);
    // NaN and infinities are void anyway, with or without a tag.
    if (text.isEmpty() || text.matches("(?i)[-+]?(nan|inf(inity)?|1\\.#.*)")) {
      return Double.NaN;
    }
    double value = number(text, "nodata value", tags);
    return type == SampleType.FLOAT32 ? (float) value : value;
  }

  private static double number(String text, String what, TiffTags tags) {
    try {
      return Double.parseDouble(text);
    } catch (NumberFormatException e) {
      throw new InputFault(
          tags.place(), what + " '" + text + "' is not a number", "mend the file's tags", e);
    }
  }

  /** Metres in the unit that the file names; 1 when it names none or one that isn't known. */
  double metresPerValue() {
    double metres = LinearUnit.named(unit);
    return Double.isNaN(metres) ? 1 : metres;
  }

  /** Elevations of a window that the library has read, NaN for void. */
  double[] values(Raster raster, int columns, int rows) {
    double[] out =
        raster.getSamples(raster.getMinX(), raster.getMinY(), columns, rows, 0, (double[]) null);
    for (int i = 0; i < out.length; i++) {
      out[i] = elevation(sign(out[i]));
    }
    return out;
  }

  /** Puts the elevations of a run of samples, NaN for void. */
  void put(ByteBuffer samples, int from, int step, int count, double[] out, int to) {
    if (type == SampleType.FLOAT32 && factor == 1 && offset == 0) {
      // The commonest kind, without a call a cell.
      for (int i = 0, at = from; i < count; i++, at += step) {
        double value = samples.getFloat(at);
        boolean none = value == nodata || !(Math.abs(value) <= Float.MAX_VALUE);
        out[to + i] = none ? Double.NaN : value;
      }
      return;
    }
    SampleType.Getter getter = type.getter;
    for (int i = 0, at = from; i < count; i++, at += step) {
      out[to + i] = elevation(getter.at(samples, at));
    }
  }

  /** The samples as they are, all of them meaning something: for masks. */
  TiffCells bare() {
    return new TiffCells(place, type, Double.NaN, 1, 0, "");
  }

  /** Elevation of cells that a file has left out. */
  double unwritten() {
    return Double.isNaN(nodata) ? elevation(0) : Double.NaN;
  }

  private double elevation(double value) {
    return value == nodata || !Double.isFinite(value) ? Double.NaN : value * factor + offset;
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
