package plyscape.zones.osm;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;

/** Where some nodes lie: those of the lines and outlines that are drawn. */
final class NodePlaces implements OsmVisitor {

  private final NodeSides sides;
  private final long[] ids;
  private final double[] lons;
  private final double[] lats;
  private int next;

  /**
   * Knows no place yet.
   *
   * @param sides tells on which side of the date line longitudes are wanted
   * @param ids rising, each once
   */
  NodePlaces(NodeSides sides, long[] ids) {
    this.sides = sides;
    this.ids = ids;
    this.lons = new double[ids.length];
    this.lats = new double[ids.length];
    Arrays.fill(lons, Double.NaN);
  }

  @Override
  public void node(long id, double lon, double lat, java.util.Map<String, Object> tags) {
    int at = find(id);
    if (at >= 0) {
      lons[at] = sides.near(lon);
      lats[at] = lat;
    }
  }

  /** Ids mostly come rising; then no search is needed. */
  private int find(long id) {
    if (next > 0 && id <= ids[next - 1]) {
      return Arrays.binarySearch(ids, 0, next, id);
    }
    while (next < ids.length && ids[next] < id) {
      next++;
    }
    return next < ids.length && ids[next] == id ? next++ : -1;
  }

  /** The place of a node, degrees, or null if it isn't in the file. */
  Coordinate of(long id) {
    int at = Arrays.binarySearch(ids, id);
    return at < 0 || Double.isNaN(lons[at]) ? null : new Coordinate(lons[at], lats[at]);
  }

  /** The places of nodes in order, or null if one of them isn't in the file. */
  Coordinate[] line(long[] nodes) {
    Coordinate[] out = new Coordinate[nodes.length];
    for (int i = 0; i < nodes.length; i++) {
      out[i] = of(nodes[i]);
      if (out[i] == null) {
        return null;
      }
    }
    return out;
  }

  /** The stretches of two nodes or more between those that aren't in the file. */
  List<Coordinate[]> stretches(long[] nodes) {
    List<Coordinate[]> out = new ArrayList<>();
    List<Coordinate> stretch = new ArrayList<>();
    for (int i = 0; i <= nodes.length; i++) {
      Coordinate place = i < nodes.length ? of(nodes[i]) : null;
      if (place != null) {
        stretch.add(place);
      } else {
        if (stretch.size() > 1) {
          out.add(stretch.toArray(new Coordinate[0]));
        }
        stretch.clear();
      }
    }
    return out;
  }
}
