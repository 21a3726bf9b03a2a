package plyscape.terrain.raster;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import plyscape.fault.InputFault;
import plyscape.fault.IoReason;
import plyscape.fault.Limit;
import plyscape.fault.Place;

/** What all readers of rasters refuse, and in which words. */
public final class RasterLimits {

  private RasterLimits() {}

  /** Asked before a reader takes memory for so many cells. */
  public static void requireSize(Place place, long columns, long rows) {
    if (columns * (double) rows > Limit.PIXELS.value()) {
      throw new InputFault(
          place,
          columns + " x " + rows + " cells are more than " + Limit.PIXELS.value(),
          "give a part of it or a coarser one; " + Limit.PIXELS.help());
    }
  }

  /** What is said of a file that breaks off or is garbled. */
  public static InputFault unreadable(Path file, Exception e) {
    String why =
        e instanceof IOException io
            ? IoReason.of(io)
            : e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
    return new InputFault(
        Place.file(file.toString()),
        "can't be read: " + why,
        e instanceof FileSystemException
            ? "check the file and its rights"
            : "check that the file is whole",
        e);
  }
}
