package plyscape.terrain.format;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.terrain.crs.GroundCrs;
import plyscape.terrain.crs.ProjectionFile;
import plyscape.terrain.raster.Affine;
import plyscape.terrain.raster.HeldRaster;
import plyscape.terrain.raster.NumberStream;
import plyscape.terrain.raster.Raster;
import plyscape.terrain.raster.RasterHead;

/**
 * Reads the ESRI ASCII grid: a head of keyword and number (NCOLS, NROWS, XLLCORNER or XLLCENTER,
 * YLL likewise, CELLSIZE or DX and DY, optional NODATA_VALUE, by default -9999), then the values,
 * north row first; line breaks among them don't matter. A .prj file beside it, if any, gives the
 * CRS.
 */
public final class AscRaster {

  private static final double DEFAULT_NODATA = -9999;

  private AscRaster() {}

  /** Whether a file's first bytes are a keyword of the format. */
  public static boolean looksLike(byte[] head) {
    String text =
        new String(head, StandardCharsets.UTF_8)
            .replace("\uFEFF", "")
            .stripLeading()
            .toLowerCase(Locale.ROOT);
    for (String key : new String[] {"ncols", "nrows", "xll", "yll", "cellsize", "nodata"}) {
      if (text.startsWith(key)) {
        return true;
      }
    }
    return false;
  }

  /** Reads a whole file. */
  public static Raster open(Path file, Warnings warnings) throws IOException {
    try (NumberStream in = new NumberStream(file)) {
      Map<String, Double> head = head(in);
      int columns = count(head, "ncols", file);
      int rows = count(head, "nrows", file);
      HeldRaster.checkRoom(file, columns, rows, Double.BYTES);
      // A value takes a digit and a blank at least, the last one no blank.
      HeldRaster.checkLength(file, columns, rows, 2.0 * columns * rows - 1);
      double cellX = size(head, "dx", file);
      double cellY = size(head, "dy", file);
      double west = edge(head, "x", cellX, file);
      double south = edge(head, "y", cellY, file);
      double nodata = head.getOrDefault("nodata_value", DEFAULT_NODATA);
      double[] values = values(in, columns, rows, nodata);
      GroundCrs crs = ProjectionFile.beside(file, warnings);
      String name = file.getFileName().toString();
      return new HeldRaster(
          new RasterHead(
              name,
              columns,
              rows,
              Affine.northUp(west, south + rows * cellY, cellX, cellY),
              RasterHead.Origin.FILE,
              crs),
          values);
    }
  }

  private static Map<String, Double> head(NumberStream in) throws IOException {
    Map<String, Double> head = new TreeMap<>();
    while (in.atWord()) {
      Place place = in.place();
      String key = in.word().toLowerCase(Locale.ROOT);
      if (!key.matches("ncols|nrows|[xy]ll(corner|center)|cellsize|dx|dy|nodata(_value)?")) {
        throw new InputFault(
            place, "unknown keyword '" + key + "'", "expected the head of an ESRI ASCII grid");
      }
      head.put(key.equals("nodata") ? "nodata_value" : key, in.number());
    }
    return head;
  }

  private static double[] values(NumberStream in, int columns, int rows, double nodata)
      throws IOException {
    double[] values = new double[columns * rows];
    for (int i = 0; i < values.length; i++) {
      double value = in.number();
      values[i] = value == nodata || !Double.isFinite(value) ? Double.NaN : value;
    }
    if (!in.atEnd()) {
      throw new InputFault(
          in.place(), "more values than " + columns + " x " + rows, "check ncols and nrows");
    }
    return values;
  }

  private static int count(Map<String, Double> head, String key, Path file) {
    double value = need(head, key, file);
    if (value < 1 || value != Math.rint(value) || value > Integer.MAX_VALUE) {
      throw new InputFault(
          Place.file(file.toString()), key + " is " + value, "expected a count from 1");
    }
    return (int) value;
  }

  private static double size(Map<String, Double> head, String key, Path file) {
    double value = need(head, head.containsKey(key) ? key : "cellsize", file);
    if (!(value > 0) || !Double.isFinite(value)) {
      throw new InputFault(
          Place.file(file.toString()), "cell size is " + value, "expected more than 0");
    }
    return value;
  }

  private static double edge(Map<String, Double> head, String axis, double cell, Path file) {
    if (head.containsKey(axis + "llcenter")) {
      return need(head, axis + "llcenter", file) - cell / 2;
    }
    return need(head, axis + "llcorner", file);
  }

  private static double need(Map<String, Double> head, String key, Path file) {
    Double value = head.get(key);
    if (value == null) {
      throw new InputFault(
          Place.file(file.toString()),
          "no " + key + " in the head",
          "check the file's first lines");
    }
    if (!Double.isFinite(value)) {
      throw new InputFault(
          Place.file(file.toString()), key + " is " + value, "expected a finite number");
    }
    return value;
  }
}
