package plyscape.terrain.crs;

import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.grid.Box;

/**
 * How long a projected CRS's unit really is on the ground of a box: measured on the WGS 84
 * ellipsoid, by the radii of curvature of its meridians and prime verticals, over small steps of
 * the plane. Good to 1e-5.
 *
 * @param metresX metres on the ground of a unit along X, in the box's middle
 * @param spread how much the most stretched direction and place of the box differ from the least
 *     stretched one, as a share
 * @param degrees the box's longer side in degrees, longitudes counted in full
 */
public record GroundScale(double metresX, double metresY, double spread, double degrees) {

  private static final double SEMI_MAJOR_M = 6_378_137;
  private static final double ECCENTRICITY_2 = 0.00669437999014;

  /** Places across the box, each way. */
  private static final int PLACES = 3;

  /** Half a step of the plane, metres: far above rounding, far below what scales change over. */
  private static final double STEP_M = 50;

  /** Metres in a unit, whatever the direction. */
  public double metresPerUnit() {
    return Math.sqrt(metresX * metresY);
  }

  /**
   * The scale over a box.
   *
   * @param crs a projected CRS
   * @param box in its units
   * @return null when the CRS can't be brought to longitude and latitude there
   */
  public static GroundScale over(GroundCrs crs, Box box) {
    double step = STEP_M / crs.metresPerUnit();
    int n = PLACES * PLACES;
    double[] xy = new double[8 * n];
    for (int i = 0; i < n; i++) {
      double x = box.minX() + box.width() * (i % PLACES) / (PLACES - 1.0);
      double y = box.minY() + box.height() * (i / PLACES) / (PLACES - 1.0);
      double[] cross = {x - step, y, x + step, y, x, y - step, x, y + step};
      System.arraycopy(cross, 0, xy, 8 * i, 8);
    }
    try {
      CrsLookup.between(crs.id(), CrsLookup.WGS_84, Place.file("")).map(xy, 4 * n);
    } catch (InputFault e) {
      return null;
    }
    double least = Double.POSITIVE_INFINITY;
    double most = 0;
    double west = Double.POSITIVE_INFINITY;
    double east = Double.NEGATIVE_INFINITY;
    double south = west;
    double north = east;
    for (int i = 0; i < n; i++) {
      double alongX = distance(xy, 8 * i) / (2 * step);
      double alongY = distance(xy, 8 * i + 4) / (2 * step);
      least = Math.min(least, Math.min(alongX, alongY));
      most = Math.max(most, Math.max(alongX, alongY));
      west = Math.min(west, xy[8 * i]);
      east = Math.max(east, xy[8 * i]);
      south = Math.min(south, xy[8 * i + 1]);
      north = Math.max(north, xy[8 * i + 1]);
    }
    int middle = 8 * (n / 2);
    double x = distance(xy, middle) / (2 * step);
    double y = distance(xy, middle + 4) / (2 * step);
    boolean sound = x > 0 && y > 0 && least > 0 && Double.isFinite(most);
    return sound
        ? new GroundScale(x, y, most / least - 1, Math.max(east - west, north - south))
        : null;
  }

  /** Metres between two near points of longitude and latitude, degrees. */
  private static double distance(double[] xy, int at) {
    double latitude = Math.toRadians((xy[at + 1] + xy[at + 3]) / 2);
    double turn = xy[at + 2] - xy[at];
    double east = Math.toRadians(turn - 360 * Math.rint(turn / 360));
    double north = Math.toRadians(xy[at + 3] - xy[at + 1]);
    double w2 = 1 - ECCENTRICITY_2 * Math.pow(Math.sin(latitude), 2);
    double primeVertical = SEMI_MAJOR_M / Math.sqrt(w2);
    double meridian = SEMI_MAJOR_M * (1 - ECCENTRICITY_2) / (w2 * Math.sqrt(w2));
    return Math.hypot(east * primeVertical * Math.cos(latitude), north * meridian);
  }
}
