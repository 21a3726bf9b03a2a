package plyscape.terrain.raster;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import plyscape.fault.InputFault;
import plyscape.fault.Place;

/**
 * Reads a world file beside an image: six numbers, the steps of x and y along a row (lines 1 and 2)
 * and down a column (lines 3 and 4), and x and y of the centre of the first cell (lines 5 and 6).
 */
public final class WorldFile {

  private WorldFile() {}

  /**
   * Where the image lies, its outer corner at raster (0, 0).
   *
   * @return null when there is no world file
   */
  public static Affine beside(Path image) throws IOException {
    String name = image.getFileName().toString();
    int dot = name.lastIndexOf('.');
    String stem = dot > 0 ? name.substring(0, dot) : name;
    String ending = dot > 0 ? name.substring(dot + 1).toLowerCase(Locale.ROOT) : "";
    String brief =
        ending.length() < 2 ? ending : "" + ending.charAt(0) + ending.charAt(ending.length() - 1);
    for (String candidate : new String[] {brief + "w", ending + "w", "wld"}) {
      for (String written : new String[] {candidate, candidate.toUpperCase(Locale.ROOT)}) {
        Path file = image.resolveSibling(stem + "." + written);
        if (Files.isRegularFile(file)) {
          return read(file);
        }
      }
    }
    return null;
  }

  private static Affine read(Path file) throws IOException {
    try (NumberStream in = new NumberStream(file)) {
      double[] n = new double[6];
      for (int i = 0; i < n.length; i++) {
        n[i] = in.number();
      }
      return new Affine(n[4], n[0], n[2], n[5], n[1], n[3]).shifted(-0.5, -0.5);
    } catch (IllegalArgumentException e) {
      throw new InputFault(
          Place.file(file.toString()),
          "it gives " + e.getMessage(),
          "expected six numbers, one a line",
          e);
    }
  }
}
