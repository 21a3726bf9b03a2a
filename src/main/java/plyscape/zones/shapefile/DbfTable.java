package plyscape.zones.shapefile;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import plyscape.fault.InputFault;
import plyscape.fault.Place;

/** The rows of a dBASE table, one after the other. */
final class DbfTable implements AutoCloseable {

  private static final int HEADER_BYTES = 32;
  private static final int FIELD_BYTES = 32;
  private static final int END_OF_FIELDS = 0x0D;
  private static final byte DELETED = '*';

  private record Field(String name, char type, int bytes) {}

  private final String file;
  private final InputStream in;
  private final List<Field> fields = new ArrayList<>();
  private final DbfText text;
  private final int rowBytes;
  private final long rows;
  private long row;

  private DbfTable(String file, InputStream in, ShapeFiles files) throws IOException {
    this.file = file;
    this.in = in;
    byte[] head = in.readNBytes(HEADER_BYTES);
    if (head.length < HEADER_BYTES) {
      throw fault("ends within its header: it was cut off");
    }
    ByteBuffer header = ByteBuffer.wrap(head).order(ByteOrder.LITTLE_ENDIAN);
    rows = Integer.toUnsignedLong(header.getInt(4));
    int headerBytes = Short.toUnsignedInt(header.getShort(8));
    rowBytes = Short.toUnsignedInt(header.getShort(10));
    text = DbfText.of(files, head[29]);
    byte[] described = in.readNBytes(Math.max(0, headerBytes - HEADER_BYTES));
    if (headerBytes <= HEADER_BYTES || described.length < headerBytes - HEADER_BYTES) {
      throw fault("ends within its header: it was cut off, or is no dBASE table");
    }
    int sum = 1;
    for (int at = 0;
        at + FIELD_BYTES <= described.length && described[at] != END_OF_FIELDS;
        at += FIELD_BYTES) {
      int bytes = Byte.toUnsignedInt(described[at + 16]);
      fields.add(new Field(name(described, at), (char) described[at + 11], bytes));
      sum += bytes;
    }
    if (sum > rowBytes) {
      throw fault("its fields take " + sum + " bytes, its rows " + rowBytes);
    }
  }

  /** The table of a shapefile, or null if it has none. */
  static DbfTable open(ShapeFiles files) throws IOException {
    InputStream in = files.open(".dbf");
    if (in == null) {
      return null;
    }
    try {
      return new DbfTable(files.name().replaceFirst("(?i)\\.shp$", ".dbf"), in, files);
    } catch (IOException | RuntimeException e) {
      in.close();
      throw e;
    }
  }

  private String name(byte[] described, int at) {
    int end = at;
    while (end < at + 11 && described[end] != 0) {
      end++;
    }
    return text.of(described, at, end - at).strip();
  }

  /** The next row's values by their fields' names, empty ones left out; null if it is deleted. */
  Map<String, Object> next() throws IOException {
    Map<String, Object> out = new LinkedHashMap<>();
    if (row >= rows) {
      return out; // more shapes than rows: some writers leave them out
    }
    row++;
    byte[] bytes = in.readNBytes(rowBytes);
    if (bytes.length < rowBytes) {
      throw fault("ends within row " + row + ": it was cut off");
    }
    int at = 1;
    for (Field field : fields) {
      Object value = value(field, bytes, at);
      if (value != null) {
        out.put(field.name(), value);
      }
      at += field.bytes();
    }
    return bytes[0] == DELETED ? null : out;
  }

  private Object value(Field field, byte[] row, int at) {
    ByteBuffer binary =
        ByteBuffer.wrap(row, at, field.bytes()).slice().order(ByteOrder.LITTLE_ENDIAN);
    if (field.type() == 'O' && field.bytes() == Double.BYTES) {
      return number(binary.getDouble());
    }
    if ((field.type() == 'I' || field.type() == '+') && field.bytes() == Integer.BYTES) {
      return (double) binary.getInt();
    }
    String said = text.of(row, at, field.bytes()).replace("\0", "").strip();
    return switch (field.type()) {
      case 'N', 'F' -> number(said);
      case 'L' ->
          said.toUpperCase(Locale.ROOT).matches("[YT]")
              ? Boolean.TRUE
              : said.toUpperCase(Locale.ROOT).matches("[NF]") ? Boolean.FALSE : null;
      case 'M', 'B', 'G', 'P' -> null; // numbers of blocks in other files
      default -> said.isEmpty() ? null : said;
    };
  }

  /** A number, or null for blanks, and for the stars of one that didn't fit. */
  private static Double number(String said) {
    try {
      return said.isEmpty() ? null : number(Double.parseDouble(said.replace(',', '.')));
    } catch (NumberFormatException e) {
      return null;
    }
  }

  private static Double number(double value) {
    return Double.isFinite(value) ? value : null;
  }

  private InputFault fault(String found) {
    return new InputFault(Place.file(file), found, "export the shapefile anew");
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
