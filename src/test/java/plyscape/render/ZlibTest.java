package plyscape.render;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.zip.Inflater;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Read back by the JDK's zlib, which also checks the sum at the end. */
class ZlibTest {

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 65536, (1 << 19) - 1, 1 << 19, (1 << 19) + 1, 3 * (1 << 19) + 77})
  void anyLength_readsBack(int length) throws Exception {
    Random random = new Random(length);
    byte[] raw = new byte[length];
    for (int i = 0; i < length; i++) {
      raw[i] = (byte) (random.nextInt(8) == 0 ? random.nextInt() : i >> 6);
    }
    assertArrayEquals(raw, unpacked(Zlib.pack(raw), length));
  }

  @Test
  void noise_readsBack() throws Exception {
    byte[] raw = new byte[1_200_000];
    new Random(7).nextBytes(raw);
    assertArrayEquals(raw, unpacked(Zlib.pack(raw), raw.length));
  }

  @Test
  void strips_costLittle() {
    byte[] raw = new byte[4 << 20];
    for (int i = 0; i < raw.length; i++) {
      raw[i] = (byte) (i % 1000 * (i / 100_000));
    }
    java.util.zip.Deflater whole = new java.util.zip.Deflater(6);
    whole.setInput(raw);
    whole.finish();
    int size = whole.deflate(new byte[raw.length]);
    assertTrue(Zlib.pack(raw).length < 1.02 * size + 200, "more than 2 % larger");
  }

  private static byte[] unpacked(byte[] packed, int length) throws Exception {
    Inflater inflater = new Inflater();
    inflater.setInput(packed);
    byte[] raw = new byte[length + 1];
    int count = 0;
    while (!inflater.finished()) {
      int more = inflater.inflate(raw, count, raw.length - count);
      count += more;
      if (more == 0 && !inflater.finished()) {
        break;
      }
    }
    assertTrue(inflater.finished());
    assertEquals(0, inflater.getRemaining());
    assertEquals(length, count);
    return java.util.Arrays.copyOf(raw, count);
  }
}
