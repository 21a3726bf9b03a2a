package plyscape.zones;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.GroundFrame;
import plyscape.terrain.crs.CrsLookup;
import plyscape.terrain.crs.FrameMaps;
import plyscape.terrain.crs.PlaneMap;
import plyscape.text.Template;
import plyscape.zones.map.MapFeature;
import plyscape.zones.map.MapFile;

/** From a map file's coordinates to panel mm: through the terrain's CRS and the ground frame. */
final class GroundMap {

  /** Straight lines of the file become curves on the panel; they are followed within this, mm. */
  private static final double BEND_MM = 0.005;

  /**
   * Lines shorter than this on the panel, mm, are taken as straight: even over 10 km their bow is
   * below BEND_MM.
   */
  private static final double STRAIGHT_MM = 4;

  /** Features that may be off by more than this on the panel, mm, are worth a word. */
  private static final double SHIFT_SEEN_MM = 0.1;

  /** Deepest halving of one line: 2^12 parts. */
  private static final int MOST_HALVINGS = 12;

  private final GroundFrame frame;
  private final PlaneMap toGround;
  private final boolean same;
  private final boolean degrees;
  private final Envelope reach;

  private GroundMap(
      GroundFrame frame, PlaneMap toGround, boolean same, boolean degrees, Envelope reach) {
    this.frame = frame;
    this.toGround = toGround;
    this.same = same;
    this.degrees = degrees;
    this.reach = reach;
  }

  /** The way from a map to the panel; says so in a warning when the CRS has to be guessed. */
  static GroundMap of(MapFile map, GroundFrame frame, Warnings warnings) {
    String from = map.crs();
    if (frame.crs().isEmpty()) {
      warnings.add(
          "zone-crs-unknown",
          "The terrain has no CRS: coordinates of "
              + map.name()
              + " are taken as the raster's own"
              + (map.crsStated() || outsideDegrees(map)
                  ? "."
                  : "; if they are longitude and latitude, set terrain.crs, so that the map falls"
                      + " into place."),
          map.name());
      from = "";
    } else if (!map.crsStated() && outsideDegrees(map)) {
      warnings.add(
          "zone-crs-guessed",
          Template.fill(
              "Coordinates of %s can't be longitude and latitude and the file names no CRS: taken"
                  + " as the terrain's, %s.",
              map.name(), shortName(frame.crs())),
          map.name());
      from = frame.crs();
    }
    Place place = Place.file(map.name());
    PlaneMap toGround = FrameMaps.to(frame, from, place);
    PlaneMap back = FrameMaps.from(frame, from, place);
    boolean same = from.equals(frame.crs());
    if (!same) {
      CrsLookup.tellSphere(from, place, map.name(), warnings);
      tellShift(from, frame, map.name(), warnings);
    }
    boolean degrees = from.equals(CrsLookup.WGS_84);
    return new GroundMap(frame, toGround, same, degrees, reach(frame.ground(), back, degrees));
  }

  private static void tellShift(String from, GroundFrame frame, String name, Warnings warnings) {
    double errorM = CrsLookup.shiftErrorM(from, frame.crs(), Place.file(name));
    double errorMm = errorM / frame.metresPerMm();
    if (errorMm > SHIFT_SEEN_MM) {
      warnings.add(
          "crs-shift",
          Template.fill(
              "between %s and %s there is no exact way without a grid that isn't at hand: features"
                  + " may be off by about %.0f m, %.1f mm on the panel; bring the map to the"
                  + " terrain's CRS with a program that has the grid",
              CrsLookup.label(from), CrsLookup.label(frame.crs()), errorM, errorMm),
          name);
    }
  }

  private static String shortName(String crs) {
    return crs.length() > 40 ? crs.substring(0, 40) + "..." : crs;
  }

  private static boolean outsideDegrees(MapFile map) {
    for (MapFeature feature : map.features()) {
      if (feature.geometry() != null && !feature.geometry().isEmpty()) {
        Envelope e = feature.geometry().getEnvelopeInternal();
        return e.getMaxX() > 541 || e.getMinX() < -541 || e.getMaxY() > 91 || e.getMinY() < -91;
      }
    }
    return false;
  }

  /**
   * The carved ground and as much again all around it, in coordinates of a map's CRS; features
   * beyond don't matter.
   *
   * @param crs code or WKT
   * @param name the map's, for messages
   */
  static Envelope reach(String crs, GroundFrame frame, String name) {
    String from = frame.crs().isEmpty() ? "" : crs;
    PlaneMap back = FrameMaps.from(frame, from, Place.file(name));
    return reach(frame.ground(), back, from.equals(CrsLookup.WGS_84));
  }

  /** The same by a way that is known. */
  private static Envelope reach(Box ground, PlaneMap back, boolean degrees) {
    int steps = 16;
    double[] edge = new double[8 * steps];
    for (int i = 0; i < steps; i++) {
      double x = ground.minX() + ground.width() * i / (steps - 1);
      double y = ground.minY() + ground.height() * i / (steps - 1);
      double[] points = {x, ground.minY(), x, ground.maxY(), ground.minX(), y, ground.maxX(), y};
      System.arraycopy(points, 0, edge, 8 * i, 8);
    }
    back.map(edge, edge.length / 2);
    Envelope out = new Envelope();
    for (int i = 0; i < edge.length; i += 2) {
      if (degrees) {
        // Both sides of the date line on one count.
        edge[i] -= 360 * Math.rint((edge[i] - edge[0]) / 360);
      }
      if (Double.isFinite(edge[i]) && Double.isFinite(edge[i + 1])) {
        out.expandToInclude(edge[i], edge[i + 1]);
      }
    }
    out.expandBy(out.getWidth(), out.getHeight());
    return out;
  }

  /** Whether a shape in degrees would be near the carved ground with its axes swapped. */
  boolean reachesSwapped(Envelope shape) {
    return degrees
        && reach.intersects(
            new Envelope(shape.getMinY(), shape.getMaxY(), shape.getMinX(), shape.getMaxX()));
  }

  /** What of the file's plane can matter, in its coordinates. */
  Envelope reach() {
    return reach;
  }

  /**
   * By how much x is to be moved so that a shape meets the carved ground: whole turns for
   * longitudes that count on over the date line, or from 0 to 360; more than once for shapes around
   * the globe. Just 0 for other CRSs, or when nothing helps.
   */
  List<Double> turns(Envelope shape) {
    if (!degrees || shape.intersects(reach) && shape.getWidth() < 180) {
      return List.of(0.0);
    }
    List<Double> out = new ArrayList<>();
    for (double turn = -720; turn <= 720; turn += 360) {
      Envelope moved = new Envelope(shape);
      moved.translate(turn, 0);
      if (moved.intersects(reach)) {
        out.add(turn);
      }
    }
    return out.isEmpty() ? List.of(0.0) : out;
  }

  GroundFrame frame() {
    return frame;
  }

  /**
   * A line of the file as a line on the panel, mm, with points added where it bends; null when it
   * can't be mapped.
   */
  Coordinate[] toPanel(Coordinate[] line) {
    double[] xy = new double[2 * line.length];
    for (int i = 0; i < line.length; i++) {
      xy[2 * i] = line[i].x;
      xy[2 * i + 1] = line[i].y;
    }
    toGround.map(xy, line.length);
    Coordinate[] out = new Coordinate[line.length];
    for (int i = 0; i < line.length; i++) {
      out[i] = new Coordinate(frame.panelX(xy[2 * i]), frame.panelY(xy[2 * i + 1]));
      if (!Double.isFinite(out[i].x) || !Double.isFinite(out[i].y)) {
        return null;
      }
    }
    return same ? out : bent(line, out);
  }

  private Coordinate[] bent(Coordinate[] file, Coordinate[] panel) {
    List<Coordinate> out = null;
    for (int i = 0; i + 1 < file.length; i++) {
      boolean far = panel[i].distance(panel[i + 1]) > STRAIGHT_MM;
      if (far && out == null) {
        out = new ArrayList<>(Arrays.asList(panel).subList(0, i));
      }
      if (out != null) {
        out.add(panel[i]);
      }
      if (far) {
        halve(file[i], file[i + 1], panel[i], panel[i + 1], 0, out);
      }
    }
    if (out == null) {
      return panel;
    }
    out.add(panel[panel.length - 1]);
    return out.toArray(new Coordinate[0]);
  }

  private void halve(
      Coordinate a, Coordinate b, Coordinate pa, Coordinate pb, int depth, List<Coordinate> out) {
    double[] xy = {(a.x + b.x) / 2, (a.y + b.y) / 2};
    Coordinate middle = new Coordinate(xy[0], xy[1]);
    toGround.map(xy, 1);
    Coordinate panelMiddle = new Coordinate(frame.panelX(xy[0]), frame.panelY(xy[1]));
    double off = Math.hypot(panelMiddle.x - (pa.x + pb.x) / 2, panelMiddle.y - (pa.y + pb.y) / 2);
    if (off > BEND_MM && depth < MOST_HALVINGS) {
      halve(a, middle, pa, panelMiddle, depth + 1, out);
      out.add(panelMiddle);
      halve(middle, b, panelMiddle, pb, depth + 1, out);
    }
  }
}
