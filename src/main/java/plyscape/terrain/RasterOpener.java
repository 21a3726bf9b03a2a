package plyscape.terrain;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.job.TerrainOptions;
import plyscape.terrain.format.AscRaster;
import plyscape.terrain.format.HgtRaster;
import plyscape.terrain.format.LasRaster;
import plyscape.terrain.format.PngRaster;
import plyscape.terrain.format.XyzRaster;
import plyscape.terrain.raster.Affine;
import plyscape.terrain.raster.Raster;
import plyscape.terrain.raster.RasterLimits;
import plyscape.terrain.tiff.TiffRaster;

/**
 * Chooses the reader of an elevation file, by its first bytes where the format has a mark and else
 * by its name.
 */
public final class RasterOpener {

  /** Coordinates of any map on Earth are less, whatever their unit. */
  private static final double FARTHEST = 1e10;

  private RasterOpener() {}

  /**
   * Opens a file.
   *
   * @throws InputFault when there is no such file, or it is in no known format, or it is broken
   */
  static Raster open(Path file, TerrainOptions.RasterSpec spec, Warnings warnings) {
    return placed(chosen(file, spec, false, warnings), file);
  }

  /** The same for a raster of classes: a TIFF's palette is read as the numbers of its colours. */
  static Raster openClasses(Path file, Warnings warnings) {
    return placed(chosen(file, TerrainOptions.RasterSpec.AS_IT_SAYS, true, warnings), file);
  }

  private static Raster placed(Raster raster, Path file) {
    RasterLimits.requireSize(Place.file(file.toString()), raster.columns(), raster.rows());
    Affine a = raster.toGround();
    double far =
        Math.max(
            reach(a.x0(), a.xCol(), a.xRow(), raster), reach(a.y0(), a.yCol(), a.yRow(), raster));
    double step = Math.abs(a.xCol() * a.yRow() - a.xRow() * a.yCol());
    if (!(far < FARTHEST) || !(step > 1e-24 * far * far)) {
      throw new InputFault(
          Place.file(file.toString()),
          "its georeference is beyond any map (coordinates up to " + (float) far + ")",
          "mend its place and cell size");
    }
    return raster;
  }

  private static double reach(double origin, double perColumn, double perRow, Raster raster) {
    return Math.abs(origin)
        + Math.abs(perColumn) * raster.columns()
        + Math.abs(perRow) * raster.rows();
  }

  private static Raster chosen(
      Path file, TerrainOptions.RasterSpec spec, boolean classes, Warnings warnings) {
    Place place = Place.file(file.toString());
    if (!Files.isRegularFile(file)) {
      throw new InputFault(
          place, Files.exists(file) ? "not a file" : "no such file", "give an elevation raster");
    }
    byte[] head;
    try {
      head = head(file);
      if (starts(head, 'I', 'I', 42, 0)
          || starts(head, 'M', 'M', 0, 42)
          || starts(head, 'I', 'I', 43, 0)
          || starts(head, 'M', 'M', 0, 43)) {
        return TiffRaster.open(file, classes, warnings);
      }
      if (heldWhole(head, file)) {
        return SharedRasters.open(file, spec, warnings, (found) -> held(head, file, spec, found));
      }
    } catch (IOException e) {
      throw RasterLimits.unreadable(file, e);
    }
    throw new InputFault(
        place,
        "not an elevation raster that can be read" + what(head),
        "use GeoTIFF, an ESRI ASCII grid, an SRTM HGT tile, a PNG, XYZ text or a LAS point cloud");
  }

  private static boolean heldWhole(byte[] head, Path file) {
    return starts(head, 0x89, 'P', 'N', 'G')
        || AscRaster.looksLike(head)
        || starts(head, 'L', 'A', 'S', 'F')
        || HgtRaster.named(file)
        || XyzRaster.looksLike(head);
  }

  /** A raster of a format that is read as a whole. */
  private static Raster held(
      byte[] head, Path file, TerrainOptions.RasterSpec spec, Warnings warnings) {
    try {
      if (starts(head, 0x89, 'P', 'N', 'G')) {
        return PngRaster.open(file, spec.encoding(), warnings);
      }
      if (AscRaster.looksLike(head)) {
        return AscRaster.open(file, warnings);
      }
      if (starts(head, 'L', 'A', 'S', 'F')) {
        return LasRaster.open(file, spec.cellM(), warnings);
      }
      return HgtRaster.named(file) ? HgtRaster.open(file) : XyzRaster.open(file, warnings);
    } catch (IOException e) {
      throw RasterLimits.unreadable(file, e);
    }
  }

  /** What a file is instead, when its first bytes tell. */
  private static String what(byte[] head) {
    if (head.length == 0) {
      return " (the file is empty)";
    }
    if (starts(head, 'P', 'K', 3, 4) || starts(head, 0x1f, 0x8b)) {
      return " (it is a packed archive: unpack it first)";
    }
    return starts(head, 0xff, 0xd8, 0xff) ? " (it is a JPEG picture)" : "";
  }

  private static byte[] head(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return in.readNBytes(1024);
    }
  }

  private static boolean starts(byte[] head, int... mark) {
    for (int i = 0; i < mark.length; i++) {
      if (i >= head.length || (head[i] & 0xff) != mark[i]) {
        return false;
      }
    }
    return true;
  }
}
