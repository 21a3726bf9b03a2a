package plyscape.lettering;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * A TrueType font made in the test, so that no font's licence is needed: 1000 units an em; H is two
 * stems and a bar of 700 units, O a ring of two squares, L a corner, 8 two squares that overlap.
 * Tables after the OpenType specification.
 */
final class MadeFont {

  private static final int EM = 1000;

  /** Contours as x, y, x, y ...; outer ones clockwise, holes counter-clockwise. */
  private static final Map<Integer, int[][]> LETTERS =
      new TreeMap<>(
          Map.of(
              (int) 'H',
              new int[][] {
                {
                  0, 0, 0, 700, 100, 700, 100, 400, 400, 400, 400, 700, 500, 700, 500, 0, 400, 0,
                  400, 300, 100, 300, 100, 0
                }
              },
              (int) 'L',
              new int[][] {{0, 0, 0, 700, 100, 700, 100, 100, 400, 100, 400, 0}},
              (int) 'O',
              new int[][] {
                {0, 0, 0, 700, 600, 700, 600, 0}, {100, 100, 500, 100, 500, 600, 100, 600}
              },
              (int) '8',
              new int[][] {
                {0, 0, 0, 400, 300, 400, 300, 0}, {100, 300, 100, 700, 400, 700, 400, 300}
              }));

  private MadeFont() {}

  private static final class Bytes {
    final ByteArrayOutputStream buffer = new ByteArrayOutputStream();
    final DataOutputStream out = new DataOutputStream(buffer);

    Bytes shorts(int... values) {
      return write(
          () -> {
            for (int value : values) {
              out.writeShort(value);
            }
          });
    }

    Bytes ints(int... values) {
      return write(
          () -> {
            for (int value : values) {
              out.writeInt(value);
            }
          });
    }

    Bytes bytes(byte[] values) {
      return write(() -> out.write(values));
    }

    private interface Writing {
      void run() throws IOException;
    }

    private Bytes write(Writing writing) {
      try {
        writing.run();
        return this;
      } catch (IOException e) {
        throw new IllegalStateException(e);
      }
    }

    byte[] done() {
      while (buffer.size() % 4 != 0) {
        buffer.write(0);
      }
      return buffer.toByteArray();
    }
  }

  static byte[] bytes() {
    List<Integer> signs = new ArrayList<>(LETTERS.keySet());
    int glyphs = signs.size() + 1;
    Bytes glyf = new Bytes();
    Bytes loca = new Bytes().ints(0);
    Bytes hmtx = new Bytes().shorts(500, 0);
    loca.ints(0);
    for (int sign : signs) {
      glyf.bytes(glyph(LETTERS.get(sign)));
      loca.ints(glyf.buffer.size());
      hmtx.shorts(700, 0);
    }
    Map<String, byte[]> tables = new TreeMap<>();
    tables.put("OS/2", os2());
    tables.put("cmap", cmap(signs));
    tables.put("glyf", glyf.done());
    tables.put(
        "head",
        new Bytes()
            .ints(0x10000, 0x10000, 0, 0x5F0F3CF5)
            .shorts(0, EM)
            .ints(0, 0, 0, 0)
            .shorts(0, 0, 700, 700, 0, 8, 2, 1, 0)
            .done());
    tables.put(
        "hhea",
        new Bytes()
            .ints(0x10000)
            .shorts(800, -200, 0, 700, 0, 0, 700, 1, 0, 0, 0, 0, 0, 0, 0, glyphs)
            .done());
    tables.put("hmtx", hmtx.done());
    tables.put("loca", loca.done());
    tables.put(
        "maxp",
        new Bytes().ints(0x10000).shorts(glyphs, 40, 4, 0, 0, 2, 0, 0, 0, 0, 0, 0, 0, 0).done());
    tables.put("name", name());
    tables.put("post", new Bytes().ints(0x30000, 0).shorts(-100, 50).ints(0, 0, 0, 0, 0).done());
    return file(tables);
  }

  private static byte[] glyph(int[][] contours) {
    Bytes out = new Bytes().shorts(contours.length, 0, 0, 700, 700);
    int points = 0;
    for (int[] contour : contours) {
      points += contour.length / 2;
      out.shorts(points - 1);
    }
    out.shorts(0);
    byte[] flags = new byte[points];
    java.util.Arrays.fill(flags, (byte) 1);
    out.bytes(flags);
    for (int axis = 0; axis < 2; axis++) {
      int last = 0;
      for (int[] contour : contours) {
        for (int i = axis; i < contour.length; i += 2) {
          out.shorts(contour[i] - last);
          last = contour[i];
        }
      }
    }
    return out.done();
  }

  private static byte[] cmap(List<Integer> signs) {
    int segments = signs.size() + 1;
    Bytes table = new Bytes().shorts(4, 16 + 8 * segments, 0, 2 * segments, 8, 2, 2 * segments - 8);
    signs.forEach(table::shorts);
    table.shorts(0xffff, 0);
    signs.forEach(table::shorts);
    table.shorts(0xffff);
    for (int i = 0; i < signs.size(); i++) {
      table.shorts(i + 1 - signs.get(i));
    }
    table.shorts(1);
    table.shorts(new int[segments]);
    return new Bytes().shorts(0, 1, 3, 1).ints(12).bytes(table.done()).done();
  }

  private static byte[] os2() {
    return new Bytes()
        .shorts(1, 600, 400, 5, 0)
        .shorts(new int[10])
        .shorts(0)
        .bytes(new byte[10])
        .ints(1, 0, 0, 0)
        .bytes("made".getBytes(StandardCharsets.US_ASCII))
        .shorts(0x40, '8', 'O', 800, -200, 0, 800, 200)
        .ints(1, 0)
        .done();
  }

  private static byte[] name() {
    byte[] text = "Made".getBytes(StandardCharsets.UTF_16BE);
    Bytes out = new Bytes().shorts(0, 4, 6 + 4 * 12);
    for (int id : new int[] {1, 2, 4, 6}) {
      out.shorts(3, 1, 0x409, id, text.length, 0);
    }
    return out.bytes(text).done();
  }

  private static byte[] file(Map<String, byte[]> tables) {
    Bytes head = new Bytes().ints(0x10000).shorts(tables.size(), 128, 3, 32);
    int offset = 12 + 16 * tables.size();
    Bytes body = new Bytes();
    for (Map.Entry<String, byte[]> table : tables.entrySet()) {
      head.bytes(table.getKey().getBytes(StandardCharsets.US_ASCII));
      head.ints(sum(table.getValue()), offset, table.getValue().length);
      offset += table.getValue().length;
      body.bytes(table.getValue());
    }
    return head.bytes(body.done()).done();
  }

  private static int sum(byte[] table) {
    int sum = 0;
    for (int i = 0; i + 3 < table.length; i += 4) {
      sum += java.nio.ByteBuffer.wrap(table, i, 4).getInt();
    }
    return sum;
  }
}
