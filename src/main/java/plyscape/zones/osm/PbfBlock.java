package plyscape.zones.osm;

import crosby.binary.Osmformat;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntUnaryOperator;

/**
 * The elements of one block. An {@link IllegalArgumentException} or {@link
 * IndexOutOfBoundsException} says that they contradict each other.
 */
final class PbfBlock {

  private static final double NANO = 1e-9;

  private final Osmformat.PrimitiveBlock block;
  private final String[] strings;

  PbfBlock(Osmformat.PrimitiveBlock block) {
    this.block = block;
    this.strings = new String[block.getStringtable().getSCount()];
  }

  /** Which kinds of elements it has. */
  Set<OsmKind> kinds() {
    EnumSet<OsmKind> out = EnumSet.noneOf(OsmKind.class);
    for (Osmformat.PrimitiveGroup group : block.getPrimitivegroupList()) {
      if (group.getNodesCount() > 0 || group.hasDense()) {
        out.add(OsmKind.NODE);
      }
      if (group.getWaysCount() > 0) {
        out.add(OsmKind.WAY);
      }
      if (group.getRelationsCount() > 0) {
        out.add(OsmKind.RELATION);
      }
    }
    return out;
  }

  /** Gives on the elements of some kinds. */
  void visit(Set<OsmKind> kinds, OsmVisitor visitor) {
    for (Osmformat.PrimitiveGroup group : block.getPrimitivegroupList()) {
      if (kinds.contains(OsmKind.NODE)) {
        for (Osmformat.Node node : group.getNodesList()) {
          Map<String, Object> tags = tags(node.getKeysCount(), node::getKeys, node::getVals);
          visitor.node(id(node.getId()), lon(node.getLon()), lat(node.getLat()), tags);
        }
        if (group.hasDense()) {
          dense(group.getDense(), visitor);
        }
      }
      if (kinds.contains(OsmKind.WAY)) {
        group.getWaysList().forEach(way -> way(way, visitor));
      }
      if (kinds.contains(OsmKind.RELATION)) {
        group.getRelationsList().forEach(relation -> relation(relation, visitor));
      }
    }
  }

  private void dense(Osmformat.DenseNodes nodes, OsmVisitor visitor) {
    long id = 0;
    long lon = 0;
    long lat = 0;
    int at = 0;
    for (int i = 0; i < nodes.getIdCount(); i++) {
      id += nodes.getId(i);
      lon += nodes.getLon(i);
      lat += nodes.getLat(i);
      Map<String, Object> tags = Map.of();
      while (at < nodes.getKeysValsCount() && nodes.getKeysVals(at) != 0) {
        tags = tags.isEmpty() ? new LinkedHashMap<>() : tags;
        tags.put(text(nodes.getKeysVals(at)), text(nodes.getKeysVals(at + 1)));
        at += 2;
      }
      at++;
      visitor.node(id(id), lon(lon), lat(lat), tags);
    }
  }

  private void way(Osmformat.Way way, OsmVisitor visitor) {
    long[] nodes = new long[way.getRefsCount()];
    long id = 0;
    for (int i = 0; i < nodes.length; i++) {
      id += way.getRefs(i);
      nodes[i] = id(id);
    }
    visitor.way(id(way.getId()), nodes, tags(way.getKeysCount(), way::getKeys, way::getVals));
  }

  private void relation(Osmformat.Relation relation, OsmVisitor visitor) {
    List<OsmMember> members = new ArrayList<>();
    long id = 0;
    for (int i = 0; i < relation.getMemidsCount(); i++) {
      id += relation.getMemids(i);
      members.add(
          new OsmMember(
              OsmKind.values()[relation.getTypes(i).getNumber()],
              id(id),
              text(relation.getRolesSid(i))));
    }
    Map<String, Object> tags = tags(relation.getKeysCount(), relation::getKeys, relation::getVals);
    visitor.relation(id(relation.getId()), members, tags);
  }

  private Map<String, Object> tags(int count, IntUnaryOperator keys, IntUnaryOperator values) {
    if (count == 0) {
      return Map.of();
    }
    Map<String, Object> tags = new LinkedHashMap<>();
    for (int i = 0; i < count; i++) {
      tags.put(text(keys.applyAsInt(i)), text(values.applyAsInt(i)));
    }
    return tags;
  }

  private String text(int number) {
    if (strings[number] == null) {
      strings[number] = block.getStringtable().getS(number).toStringUtf8();
    }
    return strings[number];
  }

  private static long id(long id) {
    if (Math.abs(id) > NodeSides.MOST_ID) {
      throw new IllegalArgumentException("an id of " + id);
    }
    return id;
  }

  private double lon(long value) {
    return degrees(block.getLonOffset(), value, 180);
  }

  private double lat(long value) {
    return degrees(block.getLatOffset(), value, 90);
  }

  private double degrees(long offset, long value, double most) {
    double degrees = NANO * (offset + (double) block.getGranularity() * value);
    // Rounding may carry a place on the date line over it.
    if (!(Math.abs(degrees) <= most + 1e-6)) {
      throw new IllegalArgumentException("a node at " + degrees + " degrees");
    }
    return degrees;
  }
}
