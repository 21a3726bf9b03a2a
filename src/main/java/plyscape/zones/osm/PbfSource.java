package plyscape.zones.osm;

import com.google.protobuf.InvalidProtocolBufferException;
import crosby.binary.Fileformat;
import crosby.binary.Osmformat;
import java.io.EOFException;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.locationtech.jts.geom.Envelope;
import plyscape.fault.InputFault;
import plyscape.fault.Place;

/**
 * An extract in the protocol buffer format: a file of blocks, each packed by itself. Some blocks at
 * a time are unpacked on all processors and then given on in order. After the first visit it is
 * known which kinds of elements each block has, so that later ones read only what they need.
 */
final class PbfSource implements OsmSource {

  /** The format's own limit of what stands before a block. */
  private static final int MOST_HEADER_BYTES = 64 * 1024;

  /** The format's own limit of a block, packed or not, and a little for its wrapping. */
  private static final int MOST_BLOB_BYTES = 32 * 1024 * 1024 + 1024;

  /** Blocks unpacked at the same time; each takes some megabytes. */
  private static final int AT_ONCE = 8;

  private static final double NANO = 1e-9;

  /** What the format asks of a reader; a file that asks for more can't be read rightly. */
  private static final Set<String> KNOWN = Set.of("OsmSchema-V0.6", "DenseNodes");

  private final String name;
  private final RandomAccessFile in;
  private final List<Block> blocks = new ArrayList<>();
  private Envelope bounds;

  /** Where a block's blob lies, and what is in it. */
  private record Block(long at, int bytes, EnumSet<OsmKind> kinds) {}

  /** Looks through the file for its blocks without unpacking them. */
  PbfSource(Path file) throws IOException {
    name = file.toString();
    in = new RandomAccessFile(file.toFile(), "r");
    try {
      find();
    } catch (IOException | RuntimeException e) {
      in.close();
      throw e;
    }
  }

  private void find() throws IOException {
    long at = 0;
    long length = in.length();
    boolean header = false;
    while (at < length) {
      in.seek(at);
      Fileformat.BlobHeader head = head(at, length);
      long start = in.getFilePointer();
      int bytes = head.getDatasize();
      if (bytes < 0 || bytes > MOST_BLOB_BYTES) {
        throw fault(at, "a block of " + bytes + " bytes, more than the format allows");
      }
      if (start + bytes > length) {
        throw cut(at);
      }
      if (head.getType().equals("OSMHeader")) {
        readHeader(at, PbfBlob.unpack(bytes(start, bytes)));
        header = true;
      } else if (head.getType().equals("OSMData")) {
        blocks.add(new Block(start, bytes, EnumSet.allOf(OsmKind.class)));
      }
      at = start + bytes;
    }
    if (!header) {
      throw fault(0, "no header block");
    }
  }

  private Fileformat.BlobHeader head(long at, long length) throws IOException {
    if (at + 4 > length) {
      throw cut(at);
    }
    int bytes = in.readInt();
    if (bytes <= 0 || bytes > MOST_HEADER_BYTES) {
      throw fault(at, "something else than a block");
    }
    if (at + 4 + bytes > length) {
      throw cut(at);
    }
    byte[] head = new byte[bytes];
    in.readFully(head);
    try {
      return Fileformat.BlobHeader.parseFrom(head);
    } catch (InvalidProtocolBufferException e) {
      throw fault(at, "something else than a block");
    }
  }

  private void readHeader(long at, byte[] data) throws IOException {
    Osmformat.HeaderBlock header;
    try {
      header = Osmformat.HeaderBlock.parseFrom(data);
    } catch (InvalidProtocolBufferException e) {
      throw fault(at, "a header that can't be read");
    }
    for (String feature : header.getRequiredFeaturesList()) {
      if (!KNOWN.contains(feature)) {
        throw new InputFault(
            Place.file(name),
            "a file that can be read only by who knows \"" + feature + "\"",
            feature.equals("HistoricalInformation")
                ? "take an extract without history"
                : "take a plain extract");
      }
    }
    if (header.hasBbox()) {
      Osmformat.HeaderBBox box = header.getBbox();
      bounds =
          new Envelope(
              box.getLeft() * NANO,
              box.getRight() * NANO,
              box.getBottom() * NANO,
              box.getTop() * NANO);
    }
  }

  @Override
  public Envelope bounds() {
    return bounds;
  }

  @Override
  public void visit(Set<OsmKind> kinds, OsmVisitor visitor) throws IOException {
    List<Block> some = new ArrayList<>();
    for (Block block : blocks) {
      if (block.kinds().stream().anyMatch(kinds::contains)) {
        some.add(block);
      }
      if (some.size() == AT_ONCE) {
        give(some, kinds, visitor);
        some.clear();
      }
    }
    give(some, kinds, visitor);
  }

  private record Packed(Block block, byte[] bytes) {}

  private void give(List<Block> some, Set<OsmKind> kinds, OsmVisitor visitor) throws IOException {
    List<Packed> packed = new ArrayList<>();
    for (Block block : some) {
      packed.add(new Packed(block, bytes(block.at(), block.bytes())));
    }
    List<PbfBlock> opened = packed.parallelStream().map(this::open).toList();
    for (int i = 0; i < opened.size(); i++) {
      some.get(i).kinds().retainAll(opened.get(i).kinds());
      try {
        opened.get(i).visit(kinds, visitor);
      } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
        throw fault(some.get(i).at(), "a block that makes no sense: " + e.getMessage());
      }
    }
  }

  private PbfBlock open(Packed packed) {
    try {
      return new PbfBlock(Osmformat.PrimitiveBlock.parseFrom(PbfBlob.unpack(packed.bytes())));
    } catch (IOException e) {
      throw fault(packed.block().at(), "a block that can't be unpacked: " + e.getMessage());
    }
  }

  private byte[] bytes(long at, int count) throws IOException {
    byte[] out = new byte[count];
    in.seek(at);
    try {
      in.readFully(out);
    } catch (EOFException e) {
      throw cut(at);
    }
    return out;
  }

  private InputFault cut(long at) {
    return new InputFault(
        Place.file(name),
        "ends within the block at byte " + at + ": it was cut off",
        "fetch the file anew, and whole");
  }

  private InputFault fault(long at, String found) {
    return new InputFault(
        Place.file(name),
        found + " at byte " + at,
        "fetch the file anew, or save it as XML (.osm)");
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
