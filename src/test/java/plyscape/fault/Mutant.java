package plyscape.fault;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.zip.CRC32;

/** Spoils the bytes of a file in the ways that files are spoiled, the same for the same seed. */
public final class Mutant {

  /** Small seeds in a row give like first numbers; this spreads them (golden ratio times 2^64). */
  private static final long SPREAD = 0x9E3779B97F4A7C15L;

  private static final long[] ODD_NUMBERS = {
    0, 1, -1, 127, 128, 255, 256, 32767, 32768, 65535, 65536, Integer.MAX_VALUE, Integer.MIN_VALUE
  };

  /** What text formats of the job trip over: marks of YAML, JSON, XML, CSV and G-code, and more. */
  private static final List<String> TOKENS =
      List.of(
          "*a",
          "&a ",
          "{",
          "}",
          "[",
          "]",
          "\t",
          "!!int ",
          "!x ",
          "?",
          "@",
          "...\n",
          "${x}",
          "- ",
          ": ",
          "|",
          "%",
          "---\n",
          "1e400",
          "-0",
          ".inf",
          "0x10",
          "\0",
          "\u0085",
          "\ud83d\ude00",
          "'",
          "\"",
          "#",
          "\n",
          "\r",
          "<<: ",
          "null",
          "~",
          "999999999999999999999999",
          "\ufeff",
          "\u2028",
          "a: &b [*b]\n",
          "true",
          "\\",
          "../../x",
          "/dev/zero",
          "/dev/null",
          ",",
          ";",
          "(",
          ")",
          "<",
          ">",
          "<!--",
          "&amp;",
          "]]>",
          "NaN",
          "-1",
          "1e-320",
          "-1e308",
          "9".repeat(400),
          "[".repeat(3000),
          "2147483648",
          "G91\n",
          "G20\n",
          "G2 X1 Y1 I0 J0\n",
          "\u001b[31m",
          "\u202e",
          "</script>",
          "M 0 0 H 1e9",
          "Z",
          "L",
          "type",
          "coordinates",
          "[[",
          "\"type\":\"Feature\",",
          "null,",
          "1,2,3\n",
          "0",
          "9");

  private final Random random;
  private byte[] bytes;

  private Mutant(byte[] whole, long seed) {
    random = new Random(seed * SPREAD);
    bytes = whole.clone();
  }

  /** One to six changes, seldom a file that breaks off. */
  public static byte[] of(byte[] whole, long seed) {
    Mutant mutant = new Mutant(whole, seed);
    int changes = 1 + mutant.random.nextInt(mutant.random.nextInt(6) + 1);
    for (int i = 0; i < changes; i++) {
      mutant.change();
    }
    // Half of the pictures get their check sums mended, so that more than the check sum is tried.
    return mutant.random.nextBoolean() ? mended(mutant.bytes) : mutant.bytes;
  }

  private void change() {
    int at = place();
    switch (random.nextInt(10)) {
      case 0 -> splice(at, Math.min(bytes.length, at + 1), one(random.nextInt(256)));
      case 1 -> splice(at, Math.min(bytes.length, at + 1), one('0' + random.nextInt(10)));
      case 2 -> number(at);
      case 3 -> splice(at, at, token());
      case 4 -> splice(at, Math.min(bytes.length, at + random.nextInt(12)), token());
      case 5 -> splice(at, Math.min(bytes.length, at + random.nextInt(40)), new byte[0]);
      case 6 -> {
        int from = place();
        splice(at, at, Arrays.copyOfRange(bytes, from, Math.min(bytes.length, from + 80)));
      }
      case 7 -> {
        if (bytes.length > 0) {
          bytes[Math.min(at, bytes.length - 1)] ^= (byte) (1 << random.nextInt(8));
        }
      }
      case 8 -> number(at);
      default -> {
        if (random.nextInt(4) == 0) {
          bytes = Arrays.copyOf(bytes, at);
        }
      }
    }
  }

  /** The head of a file is changed more often than its share: there the sizes stand. */
  private int place() {
    int end = random.nextBoolean() ? bytes.length : Math.min(bytes.length, 400);
    return random.nextInt(end + 1);
  }

  private void number(int at) {
    int wide = 1 << random.nextInt(4);
    ByteBuffer put = ByteBuffer.allocate(8);
    put.order(random.nextBoolean() ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN);
    long value = ODD_NUMBERS[random.nextInt(ODD_NUMBERS.length)];
    switch (wide) {
      case 1 -> put.put((byte) value);
      case 2 -> put.putShort((short) value);
      case 4 -> put.putInt((int) value);
      default -> put.putLong(random.nextBoolean() ? value : Long.MAX_VALUE - value);
    }
    splice(at, Math.min(bytes.length, at + wide), Arrays.copyOf(put.array(), wide));
  }

  private byte[] token() {
    return TOKENS.get(random.nextInt(TOKENS.size())).getBytes(StandardCharsets.UTF_8);
  }

  private static byte[] one(int value) {
    return new byte[] {(byte) value};
  }

  private void splice(int from, int to, byte[] put) {
    byte[] out = new byte[bytes.length - (to - from) + put.length];
    System.arraycopy(bytes, 0, out, 0, from);
    System.arraycopy(put, 0, out, from, put.length);
    System.arraycopy(bytes, to, out, from + put.length, bytes.length - to);
    bytes = out;
  }

  /** A PNG with the check sums of its chunks worked out anew; anything else as it is. */
  private static byte[] mended(byte[] bytes) {
    if (bytes.length < 8 || bytes[1] != 'P' || bytes[2] != 'N' || bytes[3] != 'G') {
      return bytes;
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(bytes, 0, 8);
    int at = 8;
    while (at + 12 <= bytes.length) {
      int length = ByteBuffer.wrap(bytes, at, 4).getInt();
      if (length < 0 || length > bytes.length - at - 12) {
        break;
      }
      CRC32 sum = new CRC32();
      sum.update(bytes, at + 4, length + 4);
      out.write(bytes, at, length + 8);
      out.writeBytes(ByteBuffer.allocate(4).putInt((int) sum.getValue()).array());
      at += length + 12;
    }
    out.write(bytes, at, bytes.length - at);
    return out.toByteArray();
  }
}
