package plyscape.zones.osm;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.LongStream;
import org.locationtech.jts.geom.Envelope;
import plyscape.terrain.crs.CrsLookup;
import plyscape.zones.map.FeatureSink;
import plyscape.zones.map.MapFeature;
import plyscape.zones.map.MapFile;
import plyscape.zones.map.MapQuery;
import plyscape.zones.map.MapShapes;

/**
 * Reads an extract in up to four goes, so that only what lies near the panel is held however large
 * the file is: first on which side of the ground each node lies, and which relations are wanted;
 * then which ways can touch the ground; then the ways that relations on the ground need; last where
 * the nodes of all these lie.
 */
final class OsmReader {

  private static final Envelope GLOBE = new Envelope(-181, 181, -91, 91);

  private final OsmSource source;
  private final FeatureSink sink;
  private final NodeSides sides;
  private final List<OsmRelation> relations = new ArrayList<>();
  private final List<WayPart> parts = new ArrayList<>();

  OsmReader(OsmSource source, FeatureSink sink, MapQuery query) {
    this.source = source;
    this.sink = sink;
    Envelope reach = query.reach().apply(CrsLookup.WGS_84);
    this.sides = new NodeSides(reach == null ? GLOBE : reach);
  }

  /**
   * Everything that is wanted: nodes first, then ways, then relations, each in the file's order.
   */
  MapFile read() throws IOException {
    source.visit(EnumSet.of(OsmKind.NODE, OsmKind.RELATION), new First());
    sides.settle();
    WaySides members = new WaySides();
    source.visit(EnumSet.of(OsmKind.WAY), members);
    relations.removeIf(relation -> members.common(relation) != 0 || !sink.wants(relation.tags()));
    Map<Long, long[]> ways = memberWays();
    NodePlaces places = new NodePlaces(sides, nodes(ways.values()));
    source.visit(EnumSet.of(OsmKind.NODE), places);
    dropDoubles();
    parts.forEach(part -> sink.keep(part.feature(places, sink)));
    RelationShapes shapes = new RelationShapes(ways, places, sink);
    relations.forEach(relation -> sink.keep(shapes.feature(relation)));
    return sink.toMap(CrsLookup.WGS_84, true, source.bounds());
  }

  /** Nodes and relations, as far as their tags are wanted. */
  private final class First implements OsmVisitor {

    @Override
    public void node(long id, double lon, double lat, Map<String, Object> tags) {
      int code = sides.code(lon, lat);
      sides.put(id, code);
      if (!tags.isEmpty() && code == 0 && sink.wants(tags)) {
        var point =
            MapShapes.FACTORY.createPoint(
                new org.locationtech.jts.geom.Coordinate(sides.near(lon), lat));
        sink.keep(new MapFeature("node/" + id, tags, point, ""));
      }
    }

    @Override
    public void relation(long id, List<OsmMember> members, Map<String, Object> tags) {
      OsmRelation relation = OsmRelation.of(id, members, tags);
      if (relation != null && sink.picks(tags)) {
        relations.add(relation);
      }
    }
  }

  /** Ways that can touch the ground, and on which sides the members of relations lie. */
  private final class WaySides implements OsmVisitor {

    private final long[] ids = wayIds();
    private final byte[] codes = new byte[ids.length];

    WaySides() {
      Arrays.fill(codes, (byte) NodeSides.ALL);
    }

    @Override
    public void way(long id, long[] nodes, Map<String, Object> tags) {
      int member = Arrays.binarySearch(ids, id);
      if (tags.isEmpty() && member < 0) {
        return;
      }
      int common = sides.common(nodes);
      if (member >= 0) {
        codes[member] = (byte) common;
      }
      if (!tags.isEmpty() && common == 0) {
        for (WayPart part : WayPart.of(id, nodes, tags)) {
          if (sink.wants(part.tags())) {
            sink.points(nodes.length);
            parts.add(part);
          }
        }
      }
    }

    /** The sides that all of a relation lies on. */
    int common(OsmRelation relation) {
      int common = NodeSides.ALL;
      for (OsmMember member : relation.members()) {
        common &= codes[Arrays.binarySearch(ids, member.id())];
      }
      return common;
    }
  }

  /** Ids of the relations' ways, rising, each once. */
  private long[] wayIds() {
    return relations.stream()
        .flatMapToLong(relation -> relation.members().stream().mapToLong(OsmMember::id))
        .sorted()
        .distinct()
        .toArray();
  }

  /** The nodes of the relations' ways. */
  private Map<Long, long[]> memberWays() throws IOException {
    long[] ids = wayIds();
    Map<Long, long[]> out = new HashMap<>();
    if (ids.length > 0) {
      source.visit(
          EnumSet.of(OsmKind.WAY),
          new OsmVisitor() {
            @Override
            public void way(long id, long[] nodes, Map<String, Object> tags) {
              if (Arrays.binarySearch(ids, id) >= 0) {
                sink.points(nodes.length);
                out.put(id, nodes);
              }
            }
          });
    }
    return out;
  }

  private long[] nodes(Collection<long[]> ways) {
    return LongStream.concat(
            parts.stream().flatMapToLong(part -> Arrays.stream(part.nodes())),
            ways.stream().flatMapToLong(Arrays::stream))
        .sorted()
        .distinct()
        .toArray();
  }

  /**
   * Takes from outer ways what their relation says too: drawn by themselves they would fill its
   * holes. So some were tagged before tags of areas moved to the relations.
   */
  private void dropDoubles() {
    Map<Long, List<OsmRelation>> outer = new HashMap<>();
    for (OsmRelation relation : relations) {
      for (OsmMember member : relation.members()) {
        if (relation.area() && !member.role().equals("inner")) {
          outer.computeIfAbsent(member.id(), id -> new ArrayList<>()).add(relation);
        }
      }
    }
    for (int i = 0; i < parts.size(); i++) {
      WayPart part = parts.get(i);
      if (part.area() && outer.containsKey(part.id())) {
        Map<String, Object> own = new LinkedHashMap<>(part.tags());
        outer
            .get(part.id())
            .forEach(relation -> own.entrySet().removeAll(relation.tags().entrySet()));
        boolean still =
            own.entrySet().stream().anyMatch(t -> AreaTags.area(t.getKey(), t.getValue()));
        parts.set(i, still ? new WayPart(part.id(), part.nodes(), own, true) : null);
      }
    }
    parts.removeIf(part -> part == null);
  }
}
