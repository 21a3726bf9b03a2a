package plyscape.zones.osm;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import plyscape.zones.map.FeatureSink;
import plyscape.zones.map.MapFeature;
import plyscape.zones.map.MapShapes;

/**
 * A way as the line or the area that it is; one that is both has two parts. Immutable.
 *
 * @param id the way's id
 * @param nodes ids of its nodes
 * @param tags those that belong to the part
 * @param area whether it is an area
 */
record WayPart(long id, long[] nodes, Map<String, Object> tags, boolean area) {

  /** A triangle is the least that has an area; its first node comes again at the end. */
  private static final int LEAST_OUTLINE = 4;

  /** What of the file it is for the notes when nodes are missing. */
  private static final String CUT = "ways of which some nodes aren't in the file";

  /** The parts of a tagged way. */
  static List<WayPart> of(long id, long[] nodes, Map<String, Object> tags) {
    boolean closed = nodes.length >= LEAST_OUTLINE && nodes[0] == nodes[nodes.length - 1];
    if (!closed) {
      return List.of(new WayPart(id, nodes, tags, false));
    }
    List<WayPart> out = new ArrayList<>();
    Map<String, Object> area = AreaTags.ofArea(tags);
    Map<String, Object> line = AreaTags.ofLine(tags);
    if (area != null) {
      out.add(new WayPart(id, nodes, area, true));
    }
    if (line != null) {
      out.add(new WayPart(id, nodes, line, false));
    }
    return out;
  }

  /** The feature that it is. */
  MapFeature feature(NodePlaces places, FeatureSink sink) {
    String label = "way/" + id;
    Coordinate[] whole = places.line(nodes);
    if (whole == null) {
      sink.note(CUT);
    }
    if (area) {
      return whole == null
          ? new MapFeature(label, tags, null, "an outline of which some nodes aren't in the file")
          : new MapFeature(label, tags, MapShapes.polygon(List.<Coordinate[]>of(whole)), "");
    }
    Geometry lines =
        whole == null ? MapShapes.lines(places.stretches(nodes)) : MapShapes.line(whole);
    return new MapFeature(label, tags, lines, "");
  }
}
