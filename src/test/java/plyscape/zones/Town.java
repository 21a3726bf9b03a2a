package plyscape.zones;

import java.util.Locale;
import java.util.Random;
import plyscape.grid.Box;
import plyscape.grid.UtmZone;

/**
 * A made town as a map in longitude and latitude, always the same for the same seed: streets in
 * grids that meet at angles, winding lanes and paths, trunk roads across everything, and buildings
 * along them. As in real maps some polygons are broken, some features have no geometry or lie far
 * outside. Property {@code kind} is trunk, street, lane, path or building.
 */
public final class Town {

  /** Of all roads; the rest are paths. */
  private static final double TRUNKS = 0.015;

  private static final double STREETS = 0.35;
  private static final double LANES = 0.4;

  /** Every so many buildings one is broken, one has no geometry, one lies outside. */
  private static final int ODD_ONE_IN = 40;

  private final UtmZone zone;
  private final Box ground;
  private final Random random;
  private final StringBuilder text = new StringBuilder();

  /** Centres and directions of the quarters, and the streets that were laid: x, y, direction. */
  private final double[][] quarters;

  private final double[][] fronts = new double[4096][];
  private int frontCount;
  private int features;

  private Town(UtmZone zone, Box ground, long seed) {
    this.zone = zone;
    this.ground = ground;
    random = new Random(seed);
    quarters = new double[5][];
    for (int q = 0; q < quarters.length; q++) {
      quarters[q] =
          new double[] {
            ground.minX() + ground.width() * (0.15 + 0.7 * random.nextDouble()),
            ground.minY() + ground.height() * (0.15 + 0.7 * random.nextDouble()),
            random.nextDouble() * Math.PI / 2
          };
    }
  }

  /**
   * The town as GeoJSON.
   *
   * @param ground where, metres of the zone; distances between streets go with its size
   */
  public static String geoJson(UtmZone zone, Box ground, int roads, int buildings, long seed) {
    Town town = new Town(zone, ground, seed);
    town.text.append("{\"type\": \"FeatureCollection\", \"features\": [\n");
    for (int i = 0; i < roads; i++) {
      double share = (i + 0.5) / roads;
      if (share < TRUNKS) {
        town.trunk();
      } else if (share < TRUNKS + STREETS) {
        town.street(i);
      } else if (share < TRUNKS + STREETS + LANES) {
        town.winding("lane", 0.006, 10, 0.15);
      } else {
        town.winding("path", 0.004, 25, 0.5);
      }
    }
    for (int i = 0; i < buildings; i++) {
      town.building(i);
    }
    return town.text.append("\n]}\n").toString();
  }

  /** Across the whole ground, from beyond one edge to beyond the other. */
  private void trunk() {
    double turn = random.nextDouble() * 2 * Math.PI;
    double size = Math.max(ground.width(), ground.height());
    double x = middleX() - size * Math.cos(turn) + 0.5 * size * (random.nextDouble() - 0.5);
    double y = middleY() - size * Math.sin(turn) + 0.5 * size * (random.nextDouble() - 0.5);
    walk("trunk", x, y, turn, size / 60, 120, 0.05);
  }

  /** A straight street of a quarter's grid, a little bent, as long as several blocks. */
  private void street(int i) {
    double[] quarter = quarters[i % quarters.length];
    double block = ground.width() / 55;
    double u = block * (random.nextInt(19) - 9);
    double v = block * (random.nextInt(15) - 9);
    double turn = quarter[2] + (random.nextBoolean() ? 0 : Math.PI / 2);
    double x = quarter[0] + u * Math.cos(quarter[2]) - v * Math.sin(quarter[2]);
    double y = quarter[1] + u * Math.sin(quarter[2]) + v * Math.cos(quarter[2]);
    walk("street", x, y, turn, block, 3 + random.nextInt(5), 0.01);
  }

  private void winding(String kind, double step, int steps, double bend) {
    double[] start =
        frontCount > 0 && random.nextInt(4) > 0
            ? fronts[random.nextInt(frontCount)]
            : new double[] {
              ground.minX() + ground.width() * random.nextDouble(),
              ground.minY() + ground.height() * random.nextDouble(),
              0
            };
    double turn = start[2] + Math.PI / 2 + 0.3 * random.nextGaussian();
    int n = steps / 2 + random.nextInt(steps);
    walk(kind, start[0], start[1], turn, step * ground.width(), n, bend);
  }

  private void walk(
      String kind, double x0, double y0, double turn0, double step, int steps, double bend) {
    double x = x0;
    double y = y0;
    double turn = turn0;
    begin(kind, "LineString", "[");
    for (int i = 0; i <= steps; i++) {
      text.append(i > 0 ? ", " : "");
      point(x, y);
      if (frontCount < fronts.length && !kind.equals("path") && ground.contains(x, y)) {
        fronts[frontCount++] = new double[] {x, y, turn};
      }
      turn += bend * random.nextGaussian();
      x += step * Math.cos(turn);
      y += step * Math.sin(turn);
    }
    text.append("]}}");
  }

  private void building(int i) {
    double[] front = fronts[random.nextInt(frontCount)];
    double side = random.nextBoolean() ? 1 : -1;
    double away = side * (15 + 25 * random.nextDouble());
    double along = 60 * (random.nextDouble() - 0.5);
    double cos = Math.cos(front[2]);
    double sin = Math.sin(front[2]);
    double x = front[0] + along * cos - away * sin;
    double y = front[1] + along * sin + away * cos;
    if (i % ODD_ONE_IN == 2) {
      x += 20 * ground.width();
    }
    if (i % ODD_ONE_IN == 1) {
      begin("building", null, "");
      return;
    }
    double w = 8 + 30 * random.nextDouble() * random.nextDouble();
    double d = 7 + 18 * random.nextDouble() * random.nextDouble();
    // An L is a rectangle with a corner bitten off; a broken one is a bow tie.
    double[][] shape =
        i % ODD_ONE_IN == 0
            ? new double[][] {{0, 0}, {w, d}, {w, 0}, {0, d}}
            : random.nextInt(4) == 0
                ? new double[][] {{0, 0}, {w, 0}, {w, d / 2}, {w / 2, d / 2}, {w / 2, d}, {0, d}}
                : new double[][] {{0, 0}, {w, 0}, {w, d}, {0, d}};
    begin("building", "Polygon", "[[");
    for (int k = 0; k <= shape.length; k++) {
      double[] p = shape[k % shape.length];
      text.append(k > 0 ? ", " : "");
      point(x + p[0] * cos - p[1] * sin, y + p[0] * sin + p[1] * cos);
    }
    text.append("]]}}");
  }

  private double middleX() {
    return ground.minX() + ground.width() / 2;
  }

  private double middleY() {
    return ground.minY() + ground.height() / 2;
  }

  private void begin(String kind, String type, String brackets) {
    text.append(features == 0 ? "" : ",\n");
    text.append("{\"type\": \"Feature\", \"id\": \"")
        .append(kind)
        .append('-')
        .append(++features)
        .append("\", \"properties\": {\"kind\": \"")
        .append(kind)
        .append("\"}, \"geometry\": ");
    if (type == null) {
      text.append("null}");
    } else {
      text.append("{\"type\": \"").append(type).append("\", \"coordinates\": ").append(brackets);
    }
  }

  private void point(double x, double y) {
    double[] xy = {x, y};
    zone.toDegrees(xy, 1);
    text.append(String.format(Locale.ROOT, "[%.7f, %.7f]", xy[0], xy[1]));
  }
}
