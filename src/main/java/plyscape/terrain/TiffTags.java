package plyscape.terrain;

import it.geosolutions.imageio.plugins.tiff.TIFFField;
import it.geosolutions.imageioimpl.plugins.tiff.TIFFImageMetadata;
import plyscape.fault.Place;

/** The tags of a TIFF's first image, by number, with defaults for what is absent. */
record TiffTags(TIFFImageMetadata metadata, Place place) {

  static final int BITS_PER_SAMPLE = 258;
  static final int PHOTOMETRIC = 262;
  static final int SAMPLES_PER_PIXEL = 277;
  static final int SAMPLE_FORMAT = 339;
  static final int PIXEL_SCALE = 33550;
  static final int TIE_POINT = 33922;
  static final int TRANSFORMATION = 34264;
  static final int GEO_KEYS = 34735;
  static final int GDAL_METADATA = 42112;
  static final int GDAL_NODATA = 42113;

  /** First number of a tag. */
  int number(int tag, int otherwise) {
    TIFFField field = metadata.getTIFFField(tag);
    return field == null ? otherwise : (int) field.getAsLong(0);
  }

  /** All numbers of a tag; none when it is absent. */
  double[] numbers(int tag) {
    TIFFField field = metadata.getTIFFField(tag);
    if (field == null) {
      return new double[0];
    }
    double[] out = new double[field.getCount()];
    for (int i = 0; i < out.length; i++) {
      out[i] = field.getAsDouble(i);
    }
    return out;
  }

  /** Text of a tag; "" when it is absent. */
  String text(int tag) {
    TIFFField field = metadata.getTIFFField(tag);
    return field == null || field.getCount() == 0 ? "" : field.getAsString(0).replace("\0", "").strip();
  }
}
