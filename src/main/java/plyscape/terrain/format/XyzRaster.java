package plyscape.terrain.format;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.terrain.crs.ProjectionFile;
import plyscape.terrain.raster.Affine;
import plyscape.terrain.raster.HeldRaster;
import plyscape.terrain.raster.NumberStream;
import plyscape.terrain.raster.Raster;
import plyscape.terrain.raster.RasterHead;
import plyscape.terrain.raster.RasterLimits;

/**
 * Reads a regular grid of points as text: x, y and z a line, parted by blanks, commas, semicolons
 * or tabs, in any order of lines; more columns are passed over, and so are lines of words before
 * the first. Points are the centres of cells; a place without a point is void. A .prj file beside
 * it, if any, gives the CRS.
 */
public final class XyzRaster {

  private static final String SEPARATORS = ",;";

  /** Lines of words before the first numbers. */
  private static final int MOST_HEADINGS = 50;

  /**
   * Fewer of the grid's places than this share have points when it isn't one: scattered points
   * would make a grid as fine as their nearest pair.
   */
  private static final double LEAST_SHARE = 0.01;

  private XyzRaster() {}

  /** Whether one of a file's first lines is three numbers or more. */
  public static boolean looksLike(byte[] head) {
    String text = new String(head, StandardCharsets.ISO_8859_1);
    // The last line may be cut off.
    return text.lines().limit(5).anyMatch(XyzRaster::numbers);
  }

  private static boolean numbers(String line) {
    String[] words = line.strip().split("[\\s,;]+");
    return words.length >= 3
        && Arrays.stream(words)
            .limit(3)
            .allMatch(word -> word.matches("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,3})?"));
  }

  /** Reads a whole file. */
  public static Raster open(Path file, Warnings warnings) throws IOException {
    XyzPoints points = read(file);
    XyzAxis x = XyzAxis.of(points.xs(), "x", file);
    XyzAxis y = XyzAxis.of(points.ys(), "y", file);
    double step = x.step() > 0 ? x.step() : y.step();
    if (!(step > 0)) {
      throw fault(file, "a single point", "wanted a grid of points");
    }
    double stepY = y.step() > 0 ? y.step() : step;
    long cells = (long) x.count() * y.count();
    if (points.count() < LEAST_SHARE * cells) {
      throw fault(
          file,
          "points that don't lie on a grid: " + points.count() + " on " + cells + " places",
          "grid them first, or give the cloud as LAS");
    }
    RasterLimits.requireSize(Place.file(file.toString()), x.count(), y.count());
    HeldRaster.checkRoom(file, x.count(), y.count(), 4 * Double.BYTES);
    double[] values = values(points, x, y, file);
    return new HeldRaster(
        new RasterHead(
            file.getFileName().toString(),
            x.count(),
            y.count(),
            Affine.northUp(
                x.first() - step / 2, y.first() + (y.count() - 0.5) * stepY, step, stepY),
            RasterHead.Origin.FILE,
            ProjectionFile.beside(file, warnings)),
        values);
  }

  /** Elevations row by row from the north, NaN where there is no point. */
  private static double[] values(XyzPoints points, XyzAxis x, XyzAxis y, Path file) {
    double[] values = new double[x.count() * y.count()];
    boolean[] taken = new boolean[values.length];
    Arrays.fill(values, Double.NaN);
    for (int i = 0; i < points.count(); i++) {
      int row = y.count() - 1 - y.at(points.ys()[i]);
      int cell = row * x.count() + x.at(points.xs()[i]);
      if (taken[cell]) {
        throw fault(
            file, "two points at " + points.xs()[i] + ", " + points.ys()[i], "wanted one a place");
      }
      taken[cell] = true;
      values[cell] = points.zs()[i];
    }
    return values;
  }

  /** Points as they come; the arrays are as long as they are many. */
  private record XyzPoints(int count, double[] xs, double[] ys, double[] zs) {}

  private static XyzPoints read(Path file) throws IOException {
    double[][] xyz = new double[3][1 << 12];
    int n = 0;
    try (NumberStream in = new NumberStream(file, SEPARATORS)) {
      for (int heading = 0; !in.atEnd() && !in.atNumber(); heading++) {
        if (heading == MOST_HEADINGS) {
          throw new InputFault(in.place(), "no numbers", "wanted x, y and z a line");
        }
        in.skipLine();
      }
      while (!in.atEnd()) {
        if (n == xyz[0].length) {
          RasterLimits.requireSize(Place.file(file.toString()), n, 2);
          for (int i = 0; i < 3; i++) {
            xyz[i] = Arrays.copyOf(xyz[i], 2 * n);
          }
        }
        xyz[0][n] = in.number();
        int line = in.line();
        xyz[1][n] = in.number();
        xyz[2][n] = in.number();
        if (in.line() != line || !Double.isFinite(xyz[0][n]) || !Double.isFinite(xyz[1][n])) {
          throw new InputFault(
              Place.at(file.toString(), line, 1),
              "a line without three numbers",
              "wanted x, y and z a line, decimals with a point");
        }
        xyz[2][n] = Double.isFinite(xyz[2][n]) ? xyz[2][n] : Double.NaN;
        in.skipLine();
        n++;
      }
    }
    if (n == 0) {
      throw fault(file, "no points", "wanted x, y and z a line");
    }
    return new XyzPoints(
        n, Arrays.copyOf(xyz[0], n), Arrays.copyOf(xyz[1], n), Arrays.copyOf(xyz[2], n));
  }

  private static InputFault fault(Path file, String found, String wanted) {
    return new InputFault(Place.file(file.toString()), found, wanted);
  }
}
