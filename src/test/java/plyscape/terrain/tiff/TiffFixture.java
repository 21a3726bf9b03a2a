package plyscape.terrain.tiff;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.Deflater;

/**
 * Writes small TIFF files, tag by tag after the TIFF 6.0 and GeoTIFF 1.1 texts (BigTIFF after its
 * proposal), so that the reader is tested on bytes that it had no part in.
 */
public final class TiffFixture {

  private static final int ASCII = 2;
  private static final int SHORT = 3;
  private static final int LONG = 4;
  private static final int DOUBLE = 12;
  private static final int LONG8 = 16;

  private final int columns;
  private final int rows;
  private final Map<Integer, Object> tags = new TreeMap<>();
  private ByteOrder order = ByteOrder.LITTLE_ENDIAN;
  private boolean big;
  private int tile;
  private int rowsPerStrip;
  private int compression = 1;
  private int predictor = 1;
  private String type = "float32";
  private double[][] bands;

  public TiffFixture(int columns, int rows, double... northFirst) {
    this.columns = columns;
    this.rows = rows;
    this.rowsPerStrip = rows;
    this.bands = new double[][] {northFirst};
  }

  public TiffFixture type(String name) {
    type = name;
    return this;
  }

  public TiffFixture bigEndian() {
    order = ByteOrder.BIG_ENDIAN;
    return this;
  }

  public TiffFixture bigTiff() {
    big = true;
    return this;
  }

  public TiffFixture tiled(int size) {
    tile = size;
    return this;
  }

  public TiffFixture strips(int rowsEach) {
    rowsPerStrip = rowsEach;
    return this;
  }

  public TiffFixture compressed(int code, int predict) {
    compression = code;
    predictor = predict;
    return this;
  }

  public TiffFixture secondBand(double... values) {
    bands = new double[][] {bands[0], values};
    return this;
  }

  public TiffFixture tag(int number, Object value) {
    tags.put(number, value);
    return this;
  }

  public TiffFixture nodata(String text) {
    return tag(42113, text);
  }

  /** Tie point of raster (0, 0) and cell size. */
  public TiffFixture placed(double x, double y, double cellX, double cellY) {
    return tag(33550, new double[] {cellX, cellY, 0}).tag(33922, new double[] {0, 0, 0, x, y, 0});
  }

  /** Key directory of model type, raster type and CRS code. */
  public TiffFixture crs(int code, boolean projected, boolean point) {
    return tag(
        34735,
        new int[] {
          1,
          1,
          0,
          3,
          1024,
          0,
          1,
          projected ? 1 : 2,
          1025,
          0,
          1,
          point ? 2 : 1,
          projected ? 3072 : 2048,
          0,
          1,
          code
        });
  }

  public Path write(Path file) throws IOException {
    List<byte[]> blocks = blocks();
    int bits = Integer.parseInt(type.replaceAll("\\D", ""));
    tags.put(256, new int[] {columns});
    tags.put(257, new int[] {rows});
    tags.put(258, same(bits));
    tags.put(259, new int[] {compression});
    tags.putIfAbsent(262, new int[] {1});
    tags.put(277, new int[] {bands.length});
    tags.put(339, same(type.startsWith("float") ? 3 : type.startsWith("int") ? 2 : 1));
    if (predictor > 1) {
      tags.put(317, new int[] {predictor});
    }
    long[] offsets = new long[blocks.size()];
    long[] counts = new long[blocks.size()];
    long at = big ? 16 : 8;
    for (int i = 0; i < offsets.length; i++) {
      offsets[i] = at;
      counts[i] = blocks.get(i).length;
      at += counts[i];
    }
    if (tile > 0) {
      tags.put(322, new int[] {tile});
      tags.put(323, new int[] {tile});
      tags.put(324, offsets);
      tags.put(325, counts);
    } else {
      tags.put(278, new int[] {rowsPerStrip});
      tags.put(273, offsets);
      tags.put(279, counts);
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(head(at));
    for (byte[] block : blocks) {
      out.write(block);
    }
    out.write(directory(at));
    return Files.write(file, out.toByteArray());
  }

  private int[] same(int value) {
    int[] out = new int[bands.length];
    java.util.Arrays.fill(out, value);
    return out;
  }

  private byte[] head(long directory) {
    ByteBuffer b = ByteBuffer.allocate(big ? 16 : 8).order(order);
    b.put((byte) (order == ByteOrder.LITTLE_ENDIAN ? 'I' : 'M')).put(b.get(0));
    if (big) {
      b.putShort((short) 43).putShort((short) 8).putShort((short) 0).putLong(directory);
    } else {
      b.putShort((short) 42).putInt((int) directory);
    }
    return b.array();
  }

  private byte[] directory(long at) {
    int entry = big ? 20 : 12;
    int length = (big ? 8 : 2) + tags.size() * entry + (big ? 8 : 4);
    ByteBuffer table = ByteBuffer.allocate(length).order(order);
    ByteBuffer extra = ByteBuffer.allocate(1 << 20).order(order);
    if (big) {
      table.putLong(tags.size());
    } else {
      table.putShort((short) tags.size());
    }
    for (Map.Entry<Integer, Object> e : tags.entrySet()) {
      ByteBuffer value = value(e.getValue());
      int size = value.remaining();
      table.putShort(e.getKey().shortValue()).putShort((short) kind(e.getValue()));
      long count = size / width(e.getValue());
      int room = big ? 8 : 4;
      if (big) {
        table.putLong(count);
      } else {
        table.putInt((int) count);
      }
      int here = table.position();
      if (size <= room) {
        table.put(value);
      } else if (big) {
        table.putLong(at + length + extra.position());
        extra.put(value);
      } else {
        table.putInt((int) (at + length + extra.position()));
        extra.put(value);
      }
      table.position(here + room);
    }
    ByteBuffer all = ByteBuffer.allocate(length + extra.position());
    all.put(table.array()).put(extra.array(), 0, extra.position());
    return all.array();
  }

  private int kind(Object value) {
    return value instanceof String
        ? ASCII
        : value instanceof double[]
            ? DOUBLE
            : value instanceof long[] ? (big ? LONG8 : LONG) : SHORT;
  }

  private int width(Object value) {
    return value instanceof String
        ? 1
        : value instanceof double[] ? 8 : value instanceof long[] ? (big ? 8 : 4) : 2;
  }

  private ByteBuffer value(Object value) {
    ByteBuffer b = ByteBuffer.allocate(1 << 16).order(order);
    if (value instanceof String text) {
      b.put(text.getBytes(StandardCharsets.US_ASCII)).put((byte) 0);
    } else if (value instanceof double[] numbers) {
      for (double number : numbers) {
        b.putDouble(number);
      }
    } else if (value instanceof long[] numbers) {
      for (long number : numbers) {
        if (big) {
          b.putLong(number);
        } else {
          b.putInt((int) number);
        }
      }
    } else {
      for (int number : (int[]) value) {
        b.putShort((short) number);
      }
    }
    return b.flip();
  }

  private List<byte[]> blocks() {
    List<byte[]> out = new ArrayList<>();
    int wide = tile > 0 ? tile : columns;
    int high = tile > 0 ? tile : rowsPerStrip;
    for (int row = 0; row < rows; row += high) {
      for (int column = 0; column < columns; column += wide) {
        out.add(pack(block(column, row, wide, tile > 0 ? high : Math.min(high, rows - row))));
      }
    }
    return out;
  }

  private byte[] block(int column, int row, int wide, int high) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (int r = row; r < row + high; r++) {
      ByteBuffer line =
          ByteBuffer.allocate(8 * wide * bands.length)
              .order(predictor == 3 ? ByteOrder.BIG_ENDIAN : order);
      for (int c = column; c < column + wide; c++) {
        for (double[] band : bands) {
          put(line, c < columns && r < rows ? band[r * columns + c] : 0);
        }
      }
      byte[] bytes = java.util.Arrays.copyOf(line.array(), line.position());
      out.writeBytes(
          predictor == 1 ? bytes : predictor == 2 ? differences(bytes, wide) : planes(bytes, wide));
    }
    return out.toByteArray();
  }

  private void put(ByteBuffer b, double value) {
    switch (type) {
      case "int8", "uint8" -> b.put((byte) (long) value);
      case "int16", "uint16" -> b.putShort((short) (long) value);
      case "int32", "uint32" -> b.putInt((int) (long) value);
      case "float32" -> b.putFloat((float) value);
      case "float64" -> b.putDouble(value);
      default -> throw new IllegalArgumentException(type);
    }
  }

  /**
   * Predictor 2 (TIFF 6.0, section 14): each sample less the one before it, here for 16-bit
   * samples.
   */
  private byte[] differences(byte[] line, int wide) {
    ByteBuffer in = ByteBuffer.wrap(line).order(order);
    ByteBuffer out = ByteBuffer.allocate(line.length).order(order);
    short before = 0;
    for (int i = 0; i < wide; i++) {
      short value = in.getShort();
      out.putShort((short) (value - before));
      before = value;
    }
    return out.array();
  }

  /**
   * Predictor 3 (Adobe's TIFF Technical Note 3): bytes of the floats by significance, then byte
   * differences.
   */
  private static byte[] planes(byte[] bigEndianFloats, int wide) {
    byte[] out = new byte[bigEndianFloats.length];
    for (int i = 0; i < wide; i++) {
      for (int k = 0; k < 4; k++) {
        out[k * wide + i] = bigEndianFloats[4 * i + k];
      }
    }
    for (int i = out.length - 1; i > 0; i--) {
      out[i] -= out[i - 1];
    }
    return out;
  }

  private byte[] pack(byte[] bytes) {
    if (compression == 8) {
      Deflater deflater = new Deflater();
      deflater.setInput(bytes);
      deflater.finish();
      byte[] out = new byte[bytes.length + 1000];
      int length = deflater.deflate(out);
      deflater.end();
      return java.util.Arrays.copyOf(out, length);
    }
    if (compression == 32773) {
      // PackBits, literal runs only: a run of n bytes begins with n - 1.
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      for (int i = 0; i < bytes.length; i += 128) {
        int n = Math.min(128, bytes.length - i);
        out.write(n - 1);
        out.write(bytes, i, n);
      }
      return out.toByteArray();
    }
    return bytes;
  }
}
