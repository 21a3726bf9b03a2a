package plyscape.terrain.crs;

import plyscape.fault.Place;
import plyscape.grid.GroundFrame;

/** Ways between a CRS and the plane of a ground frame, which may be turned. */
public final class FrameMaps {

  private FrameMaps() {}

  /**
   * From a CRS to the frame's plane.
   *
   * @param crs code or WKT; "" for the frame's own coordinates
   * @param place blamed when there is no way
   */
  public static PlaneMap to(GroundFrame frame, String crs, Place place) {
    PlaneMap map = CrsLookup.between(crs, frame.crs(), place);
    return frame.turn().none()
        ? map
        : (xy, count) -> {
          map.map(xy, count);
          frame.turn().map(xy, count);
        };
  }

  /** The way back. */
  public static PlaneMap from(GroundFrame frame, String crs, Place place) {
    PlaneMap map = CrsLookup.between(frame.crs(), crs, place);
    return frame.turn().none()
        ? map
        : (xy, count) -> {
          frame.turn().back(xy, count);
          map.map(xy, count);
        };
  }
}
