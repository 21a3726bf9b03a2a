package plyscape.region;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.noding.NodedSegmentString;
import org.locationtech.jts.noding.SegmentString;
import org.locationtech.jts.noding.snapround.SnapRoundingNoder;

/**
 * Linework noded together on the grid: undirected edges that meet only in their ends, each with what crossing it from
 * right to left adds to each component of the winding vector. Noding is by snap rounding (Hobby 1999; Guibas and Marimont
 * 1998) as in JTS, which moves nothing by more than one grid unit and never turns a closed curve inside out. Where lines
 * fall together their weights add up; edges where they cancel are gone.
 */
final class NodedEdges {

  private final LongIds vertices;
  private final LongIds edges;
  private final boolean[] terrain;
  /** Linked lists of (component, weight) by edge; the edge runs from its lower vertex number to its higher. */
  private final int[] head;
  private int[] follow = new int[256];
  private int[] component = new int[256];
  private int[] weight = new int[256];
  private int used;

  private NodedEdges(LongIds vertices, LongIds edges, int lists) {
    this.vertices = vertices;
    this.edges = edges;
    head = new int[lists];
    Arrays.fill(head, -1);
    terrain = new boolean[lists];
  }

  /** Nodes the lines together. */
  static NodedEdges of(Linework linework) {
    List<NodedSegmentString> strings = new ArrayList<>();
    for (Linework.Line line : linework.lines()) {
      Coordinate[] points = new Coordinate[line.x().length];
      for (int i = 0; i < points.length; i++) {
        points[i] = new Coordinate(line.x()[i], line.y()[i]);
      }
      strings.add(new NodedSegmentString(points, line));
    }
    SnapRoundingNoder noder = new SnapRoundingNoder(new PrecisionModel(1));
    noder.computeNodes(strings);
    List<SegmentString> noded = new ArrayList<>();
    int segments = 0;
    for (Object string : noder.getNodedSubstrings()) {
      noded.add((SegmentString) string);
      segments += ((SegmentString) string).size() - 1;
    }
    NodedEdges out = new NodedEdges(new LongIds(segments), new LongIds(segments), segments);
    for (SegmentString string : noded) {
      out.add(string);
    }
    return out;
  }

  private void add(SegmentString string) {
    Linework.Line line = (Linework.Line) string.getData();
    int before = -1;
    for (int i = 0; i < string.size(); i++) {
      Coordinate c = string.getCoordinate(i);
      int vertex = vertices.id(LongIds.pair((int) Math.rint(c.x), (int) Math.rint(c.y)));
      if (before >= 0 && vertex != before) {
        int edge = edges.id(LongIds.pair(Math.min(before, vertex), Math.max(before, vertex)));
        add(edge, line.component(), before < vertex ? line.weight() : -line.weight());
        terrain[edge] |= line.terrain();
      }
      before = vertex;
    }
  }

  private void add(int edge, int which, int by) {
    for (int i = head[edge]; i >= 0; i = follow[i]) {
      if (component[i] == which) {
        weight[i] += by;
        return;
      }
    }
    if (used == follow.length) {
      follow = Arrays.copyOf(follow, used * 2);
      component = Arrays.copyOf(component, used * 2);
      weight = Arrays.copyOf(weight, used * 2);
    }
    follow[used] = head[edge];
    component[used] = which;
    weight[used] = by;
    head[edge] = used++;
  }

  int count() {
    return edges.size();
  }

  int vertexCount() {
    return vertices.size();
  }

  int from(int edge) {
    return edges.high(edge);
  }

  int to(int edge) {
    return edges.low(edge);
  }

  int x(int vertex) {
    return vertices.high(vertex);
  }

  int y(int vertex) {
    return vertices.low(vertex);
  }

  boolean terrain(int edge) {
    return terrain[edge];
  }

  /** Whether both sides of the edge have the same winding vector. */
  boolean cancels(int edge) {
    for (int i = head[edge]; i >= 0; i = follow[i]) {
      if (weight[i] != 0) {
        return false;
      }
    }
    return true;
  }

  /** Adds what lies between right and left of the edge, times a sign, to a winding vector. */
  void addTo(int edge, int sign, int[] windings, int offset) {
    for (int i = head[edge]; i >= 0; i = follow[i]) {
      windings[offset + component[i]] += sign * weight[i];
    }
  }
}
