package plyscape.region;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.bands.Bands;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.Grid;
import plyscape.layup.Depths;
import plyscape.layup.FaceWindow;
import plyscape.terrain.Terrain;
import plyscape.text.Template;

/**
 * Gives every region its face inside its ply's window.
 *
 * <p>A region that the terrain alone would mostly give to its ply takes the whole window: the top
 * of the ply's band of elevations at the upper end, its bottom at the lower end, the same in all
 * regions of that ply. Any other region (a zone, or what was given to a neighbour) follows the
 * ground under it about the target depth, its own range scaled to the window but never steeper than
 * the terrain's plies are on the whole, so that small places don't turn into heaps.
 */
public final class FaceMaker {

  /** Finest step at which regions are sampled for their range and share, mm. */
  private static final double SAMPLE_MM = 0.3;

  private static final double MOST_SAMPLES = 2e6;

  /** Steps of the relief: what 16 bits hold. */
  static final int STEPS = 65_535;

  /**
   * A zone whose relief would be less than this is left flat, mm: nobody sees it, and a flat cutter
   * makes cleaner corners and edges.
   */
  private static final double LEAST_RELIEF_MM = 0.1;

  private final Terrain terrain;
  private final Bands bands;
  private final List<FaceWindow> windows;
  private final Depths depths;
  private final Grid relief;
  private final List<Polygon> polygons;
  private final int[] plyOf;

  private FaceMaker(
      Tiling tiling,
      Terrain terrain,
      Bands bands,
      Depths depths,
      List<FaceWindow> windows,
      Grid relief) {
    this.terrain = terrain;
    this.bands = bands;
    this.depths = depths;
    this.windows = windows;
    this.relief = relief;
    polygons = FaceField.polygons(tiling);
    plyOf = new int[polygons.size()];
    int i = 0;
    for (Map.Entry<Integer, MultiPolygon> shown : tiling.exposed().entrySet()) {
      for (int k = 0; k < shown.getValue().getNumGeometries(); k++) {
        plyOf[i++] = shown.getKey();
      }
    }
  }

  /**
   * The faces of a tiling.
   *
   * @param depths every ply of the layup
   * @param windows one a ply
   */
  public static FaceField make(
      Tiling tiling,
      Terrain terrain,
      Bands bands,
      Depths depths,
      List<FaceWindow> windows,
      double cuspMm) {
    double[] values = terrain.elevationM().values();
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (double value : values) {
      least = Math.min(least, value);
      most = Math.max(most, value);
    }
    double step = (most - least) / STEPS;
    double[] rounded = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      rounded[i] = step > 0 ? least + step * Math.rint((values[i] - least) / step) : least;
    }
    Grid relief = new Grid(terrain.elevationM().frame(), rounded);
    FaceMaker maker = new FaceMaker(tiling, terrain, bands, depths, windows, relief);
    return new FaceField(relief, least, step, maker.polygons, maker.faces(), cuspMm);
  }

  /** Warns of plies that show, are cut, and have no room to move in ({@code flat-face}). */
  public static void warnOfFlat(
      Tiling tiling, Depths depths, List<FaceWindow> windows, Warnings warnings) {
    for (int ply : new TreeSet<>(tiling.exposed().keySet())) {
      if (depths.of(ply).targetMm() > 0 && !windows.get(ply - 1).open()) {
        warnings.add(
            "flat-face",
            Template.fill(
                "ply %d (%s) has no more room than its clearances need: its faces stay flat",
                ply, depths.of(ply).ply().name()),
            "ply " + ply);
      }
    }
  }

  private List<Face> faces() {
    List<Range> ranges = ranges();
    double gain = gain();
    List<Face> faces = new ArrayList<>();
    for (int i = 0; i < plyOf.length; i++) {
      int ply = plyOf[i];
      FaceWindow window = windows.get(ply - 1);
      double target = depths.of(ply).targetMm();
      int band = bands.plyNumbers().indexOf(ply);
      Range range = ranges.get(i);
      if (!window.open()) {
        faces.add(Face.flat(ply, target));
      } else if (band >= 0 && 2 * range.own >= range.count && high(band) > low(band)) {
        faces.add(new Face(ply, high(band), low(band), window.upperMm(), window.lowerMm()));
      } else {
        faces.add(aboutTarget(ply, window, target, gain, range));
      }
    }
    return List.copyOf(faces);
  }

  private static Face aboutTarget(
      int ply, FaceWindow window, double target, double gain, Range range) {
    double middle = Math.max(window.upperMm(), Math.min(window.lowerMm(), target));
    double half = Math.min(middle - window.upperMm(), window.lowerMm() - middle);
    half = Math.min(half, gain * (range.high - range.low) / 2);
    return 2 * half < LEAST_RELIEF_MM
        ? Face.flat(ply, middle)
        : new Face(ply, range.high, range.low, middle - half, middle + half);
  }

  private double high(int band) {
    return band == 0 ? terrain.zmaxM() : bands.breaksM().get(band - 1);
  }

  private double low(int band) {
    return band == bands.breaksM().size() ? terrain.zminM() : bands.breaksM().get(band);
  }

  /** Depth for elevation, mm a metre, of the terrain's plies on the whole. */
  private double gain() {
    double relief = terrain.zmaxM() - terrain.zminM();
    double mm =
        bands.plyNumbers().stream().mapToDouble(ply -> windows.get(ply - 1).heightMm()).sum();
    return relief > 0 ? mm / relief : 0;
  }

  /** Elevations in a region, and how many of its samples the terrain alone gives to its ply. */
  private static final class Range {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    int count;
    int own;

    void add(double elevation, boolean isOwn) {
      low = Math.min(low, elevation);
      high = Math.max(high, elevation);
      count++;
      own += isOwn ? 1 : 0;
    }
  }

  private List<Range> ranges() {
    Box carved = terrain.frame().panel();
    double step = Math.max(SAMPLE_MM, Math.sqrt(carved.area() / MOST_SAMPLES));
    int columns = (int) Math.max(1, Math.ceil(carved.width() / step));
    int rows = (int) Math.max(1, Math.ceil(carved.height() / step));
    CellFrame frame =
        new CellFrame(
            carved.minX(),
            carved.minY(),
            carved.width() / columns,
            carved.height() / rows,
            columns,
            rows);
    int[] region = RegionRaster.of(polygons, frame);
    List<Range> ranges = new ArrayList<>();
    polygons.forEach(polygon -> ranges.add(new Range()));
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        int at = region[row * columns + column];
        if (at != RegionRaster.NONE) {
          sample(ranges.get(at), plyOf[at], frame.centreX(column), frame.centreY(row));
        }
      }
    }
    for (int i = 0; i < ranges.size(); i++) {
      if (ranges.get(i).count == 0) {
        Coordinate inside = polygons.get(i).getInteriorPoint().getCoordinate();
        sample(ranges.get(i), plyOf[i], inside.x, inside.y);
      }
    }
    return ranges;
  }

  private void sample(Range range, int ply, double x, double y) {
    double elevation = relief.bilinear(x, y);
    range.add(elevation, bands.plyAt(elevation) == ply);
  }
}
