package plyscape.zones;

import com.google.protobuf.ByteString;
import com.google.protobuf.MessageLite;
import crosby.binary.Fileformat;
import crosby.binary.Osmformat;
import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;

/**
 * Makes an extract as large as a country's, in the protocol buffer format: hamlets of nodes whose
 * ids lie together, ways of 4 to 16 nodes along them (three quarters closed and buildings), and a
 * relation of a wood with clearings for every 200 ways. Sorted, packed and cut into blocks as usual
 * files are.
 */
final class OsmCountry {

  private static final int BLOCK = 8000;
  private static final int HAMLET = 400;

  /** Degrees: 5 to 15 east, 45 to 55 north. */
  private static final double WEST = 5;

  private static final double SOUTH = 45;
  private static final double SPAN = 10;

  private final Random random = new Random(20);
  private final DataOutputStream out;
  private long hamlets;

  private OsmCountry(DataOutputStream out) {
    this.out = out;
  }

  /** Writes a file of about so many bytes; returns how many nodes it has. */
  static long write(Path file, long bytes) throws IOException {
    try (DataOutputStream out =
        new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(file), 1 << 20))) {
      OsmCountry country = new OsmCountry(out);
      country.header();
      // Ways and relations come to four tenths of the file, as in real ones.
      while (out.size() >= 0 && Files.size(file) < bytes * 6 / 10) {
        country.nodes();
      }
      long nodes = country.hamlets * HAMLET;
      long ways = country.ways();
      country.relations(ways);
      return nodes;
    }
  }

  private void header() throws IOException {
    Osmformat.HeaderBBox.Builder box =
        Osmformat.HeaderBBox.newBuilder()
            .setLeft((long) (WEST * 1e9))
            .setRight((long) ((WEST + SPAN) * 1e9))
            .setBottom((long) (SOUTH * 1e9))
            .setTop((long) ((SOUTH + SPAN) * 1e9));
    block(
        "OSMHeader",
        Osmformat.HeaderBlock.newBuilder()
            .setBbox(box)
            .addRequiredFeatures("OsmSchema-V0.6")
            .addRequiredFeatures("DenseNodes")
            .build());
  }

  /** Ids of hamlet h begin there: gaps as edits by many people leave them. */
  private static long first(long hamlet) {
    return 1000 + hamlet * HAMLET * 3;
  }

  private void nodes() throws IOException {
    Strings strings = new Strings();
    Osmformat.DenseNodes.Builder dense = Osmformat.DenseNodes.newBuilder();
    long id = 0;
    long lon = 0;
    long lat = 0;
    for (int n = 0; n < BLOCK; n++) {
      if (n % HAMLET == 0) {
        hamlets++;
      }
      long newId = first(hamlets - 1) + n % HAMLET;
      boolean fresh = n % HAMLET == 0;
      long newLon = fresh ? (long) ((WEST + SPAN * random.nextDouble()) * 1e7) : lon + step();
      long newLat = fresh ? (long) ((SOUTH + SPAN * random.nextDouble()) * 1e7) : lat + step();
      dense.addId(newId - id).addLon(newLon - lon).addLat(newLat - lat);
      if (random.nextInt(50) == 0) {
        dense.addKeysVals(strings.of("natural")).addKeysVals(strings.of("tree"));
      }
      dense.addKeysVals(0);
      id = newId;
      lon = newLon;
      lat = newLat;
    }
    block("OSMData", strings.block(Osmformat.PrimitiveGroup.newBuilder().setDense(dense)));
  }

  private long step() {
    return random.nextInt(4001) - 2000; // 20 m
  }

  private long ways() throws IOException {
    long id = 0;
    Strings strings = new Strings();
    Osmformat.PrimitiveGroup.Builder group = Osmformat.PrimitiveGroup.newBuilder();
    for (long hamlet = 0; hamlet < hamlets; hamlet++) {
      for (int at = 0; at + 17 < HAMLET; ) {
        int count = 4 + random.nextInt(12);
        boolean building = random.nextInt(4) > 0;
        Osmformat.Way.Builder way =
            Osmformat.Way.newBuilder().setId(++id).addRefs(first(hamlet) + at);
        for (int i = 1; i < count; i++) {
          way.addRefs(1);
        }
        if (building) {
          way.addRefs(1 - count);
        }
        way.addKeys(strings.of(building ? "building" : "highway"));
        way.addVals(strings.of(building ? "yes" : "track"));
        group.addWays(way);
        at += count;
        if (id % BLOCK == 0) {
          block("OSMData", strings.block(group));
          strings = new Strings();
          group = Osmformat.PrimitiveGroup.newBuilder();
        }
      }
    }
    block("OSMData", strings.block(group));
    return id;
  }

  private void relations(long ways) throws IOException {
    Strings strings = new Strings();
    Osmformat.PrimitiveGroup.Builder group = Osmformat.PrimitiveGroup.newBuilder();
    long id = 0;
    for (long way = 1; way + 3 < ways; way += 200) {
      Osmformat.Relation.Builder relation = Osmformat.Relation.newBuilder().setId(++id);
      relation.addMemids(way).addMemids(1).addMemids(1);
      relation.addRolesSid(strings.of("outer")).addRolesSid(strings.of("inner"));
      relation.addRolesSid(strings.of("inner"));
      for (int i = 0; i < 3; i++) {
        relation.addTypes(Osmformat.Relation.MemberType.WAY);
      }
      relation.addKeys(strings.of("type")).addVals(strings.of("multipolygon"));
      relation.addKeys(strings.of("natural")).addVals(strings.of("wood"));
      group.addRelations(relation);
      if (id % BLOCK == 0) {
        block("OSMData", strings.block(group));
        strings = new Strings();
        group = Osmformat.PrimitiveGroup.newBuilder();
      }
    }
    block("OSMData", strings.block(group));
  }

  private void block(String type, MessageLite message) throws IOException {
    byte[] raw = message.toByteArray();
    ByteArrayOutputStream packed = new ByteArrayOutputStream(raw.length);
    try (DeflaterOutputStream deflater =
        new DeflaterOutputStream(packed, new Deflater(Deflater.BEST_SPEED))) {
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

  /** The strings of one block. */
  private static final class Strings {
    private final List<String> all = new ArrayList<>(List.of(""));
    private final Map<String, Integer> numbers = new HashMap<>();

    int of(String text) {
      return numbers.computeIfAbsent(
          text,
          t -> {
            all.add(t);
            return all.size() - 1;
          });
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
}
