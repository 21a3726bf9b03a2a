package plyscape.sample;

import static plyscape.sample.TarnHollow.p;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * The valley's map: water, woods, fields, lanes and houses, in metres; written as GeoJSON in
 * longitude and latitude.
 */
final class TarnHollowMap {

  /** A line or a polygon with one ring (closed) and its properties. */
  record Feature(String kind, String name, boolean polygon, List<double[]> points) {}

  private final List<Feature> features = new ArrayList<>();
  private final List<double[]> houses = new ArrayList<>();
  private final Random random = new Random(TarnHollow.SEED);

  private final Course road =
      new Course(
          p(640, -60),
          p(760, 240),
          p(700, 560),
          p(900, 860),
          p(1120, 1090),
          p(1280, 1420),
          p(1440, 1660),
          p(1420, 1930),
          p(1560, 2150));
  private final Course bridge =
      new Course(
          p(760, 240),
          p(1010, 330),
          p(1320, 300),
          p(1650, 420),
          p(2020, 380),
          p(2380, 520),
          p(3060, 560));
  private final Course lane =
      new Course(p(1650, 420), p(1760, 640), p(1720, 830), p(1900, 930), p(2240, 950));
  private final Course track = new Course(p(700, 560), p(420, 640), p(180, 560), p(-60, 640));

  /** All features, in the order in which they are written. */
  List<Feature> features() {
    features.clear();
    houses.clear();
    line("river", "Hollow Water", TarnHollow.RIVER);
    line("river", "Kettle Beck", TarnHollow.BECK);
    List<double[]> shore = new ArrayList<>();
    for (int i = 0; i < 96; i++) {
      double angle = Math.PI * 2 * i / 96;
      double r = TarnHollow.tarnRadius(angle);
      shore.add(
          new double[] {
            TarnHollow.TARN_CENTRE[0] + r * Math.cos(angle),
            TarnHollow.TARN_CENTRE[1] + r * Math.sin(angle)
          });
    }
    area("tarn", "The Tarn", shore);
    woods();
    fields();
    line("street", "Valley Road", road);
    line("street", "Bridge Street", bridge);
    line("street", "Mill Lane", lane);
    line("street", "Quarry Track", track);
    rows("Low Hollow", road, 0.06, 0.33, 13);
    rows("Low Hollow", bridge, 0.08, 0.43, 15);
    rows("Mill", lane, 0.30, 0.62, 4);
    rows("Beck Farm", lane, 0.86, 0.99, 2);
    rows("Tarn Houses", road, 0.60, 0.72, 4);
    return List.copyOf(features);
  }

  private void woods() {
    double[][] middles = {
      {1010, 1560, 190},
      {640, 1160, 170},
      {2090, 1600, 150},
      {2420, 1520, 205},
      {2130, 720, 120},
      {2620, 900, 175},
      {330, 330, 150},
      {2730, 260, 150},
      {1250, 2010, 130},
      {1560, 620, 85},
      {400, 2560, 160},
      {2620, 2420, 140}
    };
    for (int w = 0; w < middles.length; w++) {
      List<double[]> edge = new ArrayList<>();
      for (int i = 0; i < 40; i++) {
        double angle = Math.PI * 2 * i / 40;
        double wobble =
            Smooth.fractal(
                TarnHollow.SEED + 900 + w, 1.3 * Math.cos(angle), 1.3 * Math.sin(angle), 2);
        double r = middles[w][2] * (1 + 0.5 * wobble);
        edge.add(
            p(middles[w][0] + 1.25 * r * Math.cos(angle), middles[w][1] + r * Math.sin(angle)));
      }
      area("wood", "Wood " + (w + 1), edge);
    }
  }

  /** Ploughed fields: parallelograms on the lower slopes. */
  private void fields() {
    double[][] corners = {
      {90, 30, 4}, {310, 25, -3}, {1500, 60, 10}, {1715, 100, 10}, {2010, 120, 10}, {2250, 180, 10}
    };
    for (double[] corner : corners) {
      double turn = Math.toRadians(corner[2]);
      List<double[]> ring = new ArrayList<>();
      for (double[] c : new double[][] {{0, 0}, {190, 0}, {190, 130}, {0, 130}}) {
        ring.add(
            p(
                corner[0] + c[0] * Math.cos(turn) - c[1] * Math.sin(turn),
                corner[1] + c[0] * Math.sin(turn) + c[1] * Math.cos(turn)));
      }
      area("field", "Ploughed field", ring);
    }
  }

  /** Houses on both sides of a street, none nearer to another or to water than the cutter needs. */
  private void rows(String village, Course street, double from, double to, int aSide) {
    for (int i = 0; i < aSide; i++) {
      for (int side = -1; side <= 1; side += 2) {
        double[] at = street.at(from + (to - from) * (i + 0.5) / aSide);
        double length = 44 + 14 * random.nextDouble();
        double depth = 34 + 8 * random.nextDouble();
        double away = side * (58 + 10 * random.nextDouble());
        double x = at[0] - at[3] * away;
        double y = at[1] + at[2] * away;
        if (free(x, y)) {
          houses.add(new double[] {x, y});
          List<double[]> ring = new ArrayList<>();
          for (double[] c : new double[][] {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}) {
            double u = c[0] * length / 2;
            double v = c[1] * depth / 2;
            ring.add(new double[] {x + u * at[2] - v * at[3], y + u * at[3] + v * at[2]});
          }
          area("building", village + " " + houses.size(), ring);
        }
      }
    }
    // A shed too small for any cutter, so that the report has something to leave out.
    double[] at = street.at(to);
    double x = at[0] + at[3] * 70;
    double y = at[1] - at[2] * 70;
    area(
        "building", village + " shed", List.of(d(x, y), d(x + 9, y), d(x + 9, y + 7), d(x, y + 7)));
  }

  private boolean free(double x, double y) {
    for (Course street : List.of(road, bridge, lane, track)) {
      if (street.distance(x, y) < 54) {
        return false;
      }
    }
    if (TarnHollow.RIVER.distance(x, y) < 68 || TarnHollow.BECK.distance(x, y) < 60) {
      return false;
    }
    return houses.stream().allMatch(h -> Math.hypot(h[0] - x, h[1] - y) > 88);
  }

  private static double[] d(double x, double y) {
    return new double[] {x, y};
  }

  private void line(String kind, String name, Course course) {
    features.add(new Feature(kind, name, false, List.of(course.points())));
  }

  private void area(String kind, String name, List<double[]> ring) {
    List<double[]> closed = new ArrayList<>(ring);
    closed.add(ring.get(0));
    features.add(new Feature(kind, name, true, closed));
  }

  /**
   * GeoJSON after RFC 7946: longitude and latitude with 7 places (about 1 cm), one feature a line.
   */
  String geoJson() {
    StringBuilder out = new StringBuilder("{\"type\": \"FeatureCollection\", \"features\": [\n");
    List<Feature> all = features();
    for (int i = 0; i < all.size(); i++) {
      Feature f = all.get(i);
      out.append("{\"type\": \"Feature\", \"properties\": {\"kind\": \"")
          .append(f.kind())
          .append("\", \"name\": \"")
          .append(f.name())
          .append("\"}, \"geometry\": {\"type\": \"")
          .append(f.polygon() ? "Polygon" : "LineString")
          .append("\", \"coordinates\": ")
          .append(f.polygon() ? "[[" : "[");
      for (int j = 0; j < f.points().size(); j++) {
        double[] lonLat = Utm32.lonLat(f.points().get(j)[0], f.points().get(j)[1]);
        out.append(
            String.format(Locale.ROOT, "%s[%.7f, %.7f]", j == 0 ? "" : ", ", lonLat[0], lonLat[1]));
      }
      out.append(f.polygon() ? "]]" : "]")
          .append("}}")
          .append(i + 1 < all.size() ? "," : "")
          .append('\n');
    }
    return out.append("]}\n").toString();
  }
}
