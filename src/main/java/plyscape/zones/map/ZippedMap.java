package plyscape.zones.map;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import plyscape.fault.InputFault;
import plyscape.fault.Place;

/** A map in a zip archive, without unpacking it onto the disk. */
public final class ZippedMap implements AutoCloseable {

  private static final byte[] MAGIC = {'P', 'K', 3, 4};

  /** An entry that unpacks to more than this many bytes isn't read. */
  private static final long MOST_BYTES = 4_000_000_000L;

  private final ZipFile zip;

  /** Opens an archive. */
  public ZippedMap(Path file) throws IOException {
    zip = new ZipFile(file.toFile());
  }

  /** Whether a file is an archive. */
  public static boolean is(MapHead head) {
    return head.startsWith(MAGIC);
  }

  /** Names of entries that end so, letter case aside; none if the archive can't be read. */
  public static List<String> names(Path file, String ending) {
    try (ZipFile zip = new ZipFile(file.toFile())) {
      return zip.stream()
          .map(ZipEntry::getName)
          // One system's archiver puts a shadow of each file beside it.
          .filter(name -> !name.startsWith("__MACOSX/"))
          .filter(name -> name.toLowerCase(Locale.ROOT).endsWith(ending))
          .toList();
    } catch (IOException | IllegalArgumentException e) {
      return List.of();
    }
  }

  /** The bytes of an entry, or null if there is none of that name, letter case aside. */
  public InputStream open(String name) throws IOException {
    ZipEntry found =
        zip.stream()
            .filter(entry -> entry.getName().equalsIgnoreCase(name))
            .findFirst()
            .orElse(null);
    return found == null ? null : new Limited(zip.getInputStream(found));
  }

  /** The fault of an archive that can't be read. */
  public static InputFault fault(Path file, IOException e) {
    return new InputFault(
        Place.file(file.toString()),
        "can't be unpacked: " + e.getMessage(),
        "pack it anew, or name the map itself",
        e);
  }

  @Override
  public void close() throws IOException {
    zip.close();
  }

  /** Breaks off where a small archive would unpack without end. */
  private static final class Limited extends FilterInputStream {
    private long left = MOST_BYTES;

    Limited(InputStream in) {
      super(in);
    }

    @Override
    public int read() throws IOException {
      check(1);
      return super.read();
    }

    @Override
    public int read(byte[] bytes, int from, int count) throws IOException {
      int read = super.read(bytes, from, count);
      check(Math.max(0, read));
      return read;
    }

    private void check(int more) throws IOException {
      left -= more;
      if (left < 0) {
        throw new IOException("it unpacks to more than " + MOST_BYTES + " bytes");
      }
    }
  }
}
