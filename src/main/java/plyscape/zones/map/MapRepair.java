package plyscape.zones.map;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.LineIntersector;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.locationtech.jts.noding.MCIndexNoder;
import org.locationtech.jts.noding.NodedSegmentString;
import org.locationtech.jts.noding.SegmentIntersector;
import org.locationtech.jts.noding.SegmentString;

/**
 * How much there is to mend in outlines that cross themselves. Each crossing becomes a corner of
 * what is mended, so their number, not that of the points, says what it costs.
 */
public final class MapRepair {

  /**
   * More crossings than this aren't mended: a map has some, scribble has them in proportion to the
   * square of its points. So many take about a second.
   */
  public static final int MOST_CROSSINGS = 100_000;

  private MapRepair() {}

  /** How often the lines of a geometry cross; counting stops above {@link #MOST_CROSSINGS}. */
  public static int crossings(Geometry geometry) {
    List<SegmentString> lines = new ArrayList<>();
    for (Object line : LinearComponentExtracter.getLines(geometry)) {
      lines.add(new NodedSegmentString(((Geometry) line).getCoordinates(), null));
    }
    Crossings count = new Crossings();
    new MCIndexNoder(count).computeNodes(lines);
    return count.found;
  }

  private static final class Crossings implements SegmentIntersector {

    private final LineIntersector cross = new RobustLineIntersector();
    private int found;

    @Override
    public void processIntersections(SegmentString a, int i, SegmentString b, int j) {
      Coordinate a0 = a.getCoordinate(i);
      Coordinate a1 = a.getCoordinate(i + 1);
      Coordinate b0 = b.getCoordinate(j);
      Coordinate b1 = b.getCoordinate(j + 1);
      cross.computeIntersection(a0, a1, b0, b1);
      if (cross.isProper()) {
        found++;
      }
    }

    @Override
    public boolean isDone() {
      return found > MOST_CROSSINGS;
    }
  }
}
