package plyscape.zones.osm;

import com.google.protobuf.ByteString;
import com.google.protobuf.MessageLite;
import crosby.binary.Fileformat;
import crosby.binary.Osmformat;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.DeflaterOutputStream;

/** One small extract, as XML and in the protocol buffer format. */
final class OsmFixture {

  private record Node(long id, double lon, double lat, Map<String, String> tags) {}

  private record Way(long id, long[] nodes, Map<String, String> tags) {}

  private record Relation(long id, List<OsmMember> members, Map<String, String> tags) {}

  private final List<Node> nodes = new ArrayList<>();
  private final List<Way> ways = new ArrayList<>();
  private final List<Relation> relations = new ArrayList<>();
  private double[] bounds;

  /** Bounds of the extract, degrees. */
  OsmFixture bounds(double minLon, double minLat, double maxLon, double maxLat) {
    bounds = new double[] {minLon, minLat, maxLon, maxLat};
    return this;
  }

  OsmFixture node(long id, double lon, double lat, String... tags) {
    nodes.add(new Node(id, lon, lat, tags(tags)));
    return this;
  }

  /** Nodes with ids from a first one on, at pairs of longitude and latitude. */
  OsmFixture nodes(long first, double... lonLat) {
    for (int i = 0; i < lonLat.length; i += 2) {
      node(first + i / 2, lonLat[i], lonLat[i + 1]);
    }
    return this;
  }

  OsmFixture way(long id, long[] refs, String... tags) {
    ways.add(new Way(id, refs, tags(tags)));
    return this;
  }

  /** Ways as members: pairs of id and role. */
  OsmFixture relation(long id, Object[] members, String... tags) {
    List<OsmMember> list = new ArrayList<>();
    for (int i = 0; i < members.length; i += 2) {
      list.add(
          new OsmMember(OsmKind.WAY, ((Number) members[i]).longValue(), (String) members[i + 1]));
    }
    relations.add(new Relation(id, list, tags(tags)));
    return this;
  }

  private static Map<String, String> tags(String... tags) {
    Map<String, String> out = new TreeMap<>();
    for (String tag : tags) {
      out.put(tag.split("=")[0], tag.split("=")[1]);
    }
    return out;
  }

  String xml() {
    StringBuilder out = new StringBuilder("<?xml version='1.0'?>\n<osm version=\"0.6\">\n");
    if (bounds != null) {
      out.append(
          "<bounds minlon=\"%s\" minlat=\"%s\" maxlon=\"%s\" maxlat=\"%s\"/>\n"
              .formatted(bounds[0], bounds[1], bounds[2], bounds[3]));
    }
    for (Node n : nodes) {
      out.append("<node id=\"%s\" lon=\"%s\" lat=\"%s\">".formatted(n.id, n.lon, n.lat));
      out.append(xml(n.tags)).append("</node>\n");
    }
    for (Way w : ways) {
      out.append("<way id=\"").append(w.id).append("\">");
      for (long ref : w.nodes) {
        out.append("<nd ref=\"").append(ref).append("\"/>");
      }
      out.append(xml(w.tags)).append("</way>\n");
    }
    for (Relation r : relations) {
      out.append("<relation id=\"").append(r.id).append("\">");
      for (OsmMember m : r.members) {
        out.append("<member type=\"way\" ref=\"%s\" role=\"%s\"/>".formatted(m.id(), m.role()));
      }
      out.append(xml(r.tags)).append("</relation>\n");
    }
    return out.append("</osm>\n").toString();
  }

  private static String xml(Map<String, String> tags) {
    StringBuilder out = new StringBuilder();
    tags.forEach((k, v) -> out.append("<tag k=\"%s\" v=\"%s\"/>".formatted(k, v)));
    return out.toString();
  }

  /** Ways before nodes in blocks of their own, as nothing forbids, if {@code shuffled}. */
  byte[] pbf(boolean shuffled) {
    try {
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      DataOutputStream out = new DataOutputStream(bytes);
      Osmformat.HeaderBlock.Builder header =
          Osmformat.HeaderBlock.newBuilder()
              .addRequiredFeatures("OsmSchema-V0.6")
              .addRequiredFeatures("DenseNodes");
      if (bounds != null) {
        header.setBbox(
            Osmformat.HeaderBBox.newBuilder()
                .setLeft(nano(bounds[0]))
                .setBottom(nano(bounds[1]))
                .setRight(nano(bounds[2]))
                .setTop(nano(bounds[3])));
      }
      block(out, "OSMHeader", header.build());
      List<MessageLite> blocks = List.of(nodeBlock(), wayBlock(), relationBlock());
      for (int i = 0; i < blocks.size(); i++) {
        block(out, "OSMData", blocks.get(shuffled ? blocks.size() - 1 - i : i));
      }
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static long nano(double degrees) {
    return Math.round(degrees * 1e9);
  }

  private static void block(DataOutputStream out, String type, MessageLite message)
      throws IOException {
    byte[] raw = message.toByteArray();
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (DeflaterOutputStream deflater = new DeflaterOutputStream(packed)) {
      deflater.write(raw);
    }
    byte[] blob =
        Fileformat.Blob.newBuilder()
            .setRawSize(raw.length)
            .setZlibData(ByteString.copyFrom(packed.toByteArray()))
            .build()
            .toByteArray();
    byte[] head =
        Fileformat.BlobHeader.newBuilder()
            .setType(type)
            .setDatasize(blob.length)
            .build()
            .toByteArray();
    out.writeInt(head.length);
    out.write(head);
    out.write(blob);
  }

  /** Numbers of strings, as a block has them. */
  private static final class Strings {
    private final List<String> all = new ArrayList<>(List.of(""));

    int of(String text) {
      int at = all.indexOf(text);
      if (at <= 0) {
        all.add(text);
        return all.size() - 1;
      }
      return at;
    }

    Osmformat.PrimitiveBlock block(Osmformat.PrimitiveGroup.Builder group) {
      Osmformat.StringTable.Builder table = Osmformat.StringTable.newBuilder();
      all.forEach(text -> table.addS(ByteString.copyFromUtf8(text)));
      return Osmformat.PrimitiveBlock.newBuilder()
          .setStringtable(table)
          .addPrimitivegroup(group)
          .build();
    }
  }

  private Osmformat.PrimitiveBlock nodeBlock() {
    Strings strings = new Strings();
    Osmformat.DenseNodes.Builder dense = Osmformat.DenseNodes.newBuilder();
    long id = 0;
    long lon = 0;
    long lat = 0;
    for (Node n : nodes) {
      dense.addId(n.id - id);
      dense.addLon(Math.round(n.lon * 1e7) - lon);
      dense.addLat(Math.round(n.lat * 1e7) - lat);
      id = n.id;
      lon = Math.round(n.lon * 1e7);
      lat = Math.round(n.lat * 1e7);
      n.tags.forEach((k, v) -> dense.addKeysVals(strings.of(k)).addKeysVals(strings.of(v)));
      dense.addKeysVals(0);
    }
    return strings.block(Osmformat.PrimitiveGroup.newBuilder().setDense(dense));
  }

  private Osmformat.PrimitiveBlock wayBlock() {
    Strings strings = new Strings();
    Osmformat.PrimitiveGroup.Builder group = Osmformat.PrimitiveGroup.newBuilder();
    for (Way w : ways) {
      Osmformat.Way.Builder way = Osmformat.Way.newBuilder().setId(w.id);
      long before = 0;
      for (long ref : w.nodes) {
        way.addRefs(ref - before);
        before = ref;
      }
      w.tags.forEach((k, v) -> way.addKeys(strings.of(k)).addVals(strings.of(v)));
      group.addWays(way);
    }
    return strings.block(group);
  }

  private Osmformat.PrimitiveBlock relationBlock() {
    Strings strings = new Strings();
    Osmformat.PrimitiveGroup.Builder group = Osmformat.PrimitiveGroup.newBuilder();
    for (Relation r : relations) {
      Osmformat.Relation.Builder relation = Osmformat.Relation.newBuilder().setId(r.id);
      long before = 0;
      for (OsmMember m : r.members) {
        relation.addMemids(m.id() - before).addRolesSid(strings.of(m.role()));
        relation.addTypes(Osmformat.Relation.MemberType.WAY);
        before = m.id();
      }
      r.tags.forEach((k, v) -> relation.addKeys(strings.of(k)).addVals(strings.of(v)));
      group.addRelations(relation);
    }
    return strings.block(group);
  }
}
