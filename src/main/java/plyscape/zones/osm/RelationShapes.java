package plyscape.zones.osm;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import plyscape.zones.map.FeatureSink;
import plyscape.zones.map.MapFeature;
import plyscape.zones.map.MapShapes;
import plyscape.zones.map.RingNesting;

/**
 * Puts relations together from their ways. Rings go by where they lie, not by the roles that they
 * are given; only where outlines are incomplete a ring of inner ways alone makes no area, as the
 * outline around it may be what is missing.
 */
final class RelationShapes {

  private final Map<Long, long[]> ways;
  private final NodePlaces places;
  private final FeatureSink sink;

  /**
   * Prepares.
   *
   * @param ways nodes of the member ways that are in the file
   */
  RelationShapes(Map<Long, long[]> ways, NodePlaces places, FeatureSink sink) {
    this.ways = ways;
    this.places = places;
    this.sink = sink;
  }

  /** The feature that a relation is. */
  MapFeature feature(OsmRelation relation) {
    String label = "relation/" + relation.id();
    Geometry geometry = relation.area() ? area(relation) : lines(relation);
    return new MapFeature(
        label,
        relation.tags(),
        geometry,
        geometry.isEmpty() ? (relation.area() ? "no outline that closes" : "no way of it") : "");
  }

  private Geometry lines(OsmRelation relation) {
    List<Coordinate[]> out = new ArrayList<>();
    for (OsmMember member : relation.members()) {
      long[] nodes = ways.get(member.id());
      if (nodes == null) {
        sink.note("members of relations that aren't in the file");
      } else {
        out.addAll(places.stretches(nodes));
      }
    }
    return MapShapes.lines(out);
  }

  private Geometry area(OsmRelation relation) {
    List<long[]> lines = new ArrayList<>();
    List<Boolean> inner = new ArrayList<>();
    int missing = 0;
    for (OsmMember member : relation.members()) {
      long[] nodes = ways.get(member.id());
      if (nodes == null || nodes.length < 2 || places.line(nodes) == null) {
        sink.note("members of relations that aren't in the file");
        missing++;
      } else {
        lines.add(nodes);
        inner.add(member.role().equals("inner"));
      }
    }
    RingJoiner joined = RingJoiner.of(lines);
    if (joined.open() > 0) {
      sink.note("relations with an outline that doesn't close");
    }
    List<RingJoiner.Ring> rings = joined.rings();
    RingNesting nesting =
        new RingNesting(rings.stream().map(ring -> places.line(ring.nodes())).toList());
    boolean complete = missing == 0 && joined.open() == 0;
    for (int i = 0; i < rings.size(); i++) {
      boolean hole = nesting.depth(i) % 2 == 1;
      if (rings.get(i).ways().stream().allMatch(way -> inner.get(way) != hole)) {
        sink.note("rings with the wrong role (where they lie counts)");
      }
    }
    return nesting.area(ring -> complete || !rings.get(ring).ways().stream().allMatch(inner::get));
  }
}
