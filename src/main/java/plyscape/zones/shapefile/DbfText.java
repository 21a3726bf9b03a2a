package plyscape.zones.shapefile;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import plyscape.fault.InputFault;
import plyscape.fault.Place;

/**
 * How a table's letters are encoded: by the {@code .cpg} beside it, else by the table's own mark,
 * else UTF-8 wherever bytes can be that and Windows' western letters where they can't: text in one
 * is next to never valid in the other.
 */
final class DbfText {

  private static final int MOST_BYTES = 1000;

  /** Marks of byte 29 (language driver). */
  private static final Map<Integer, String> MARKS =
      Map.ofEntries(
          Map.entry(0x01, "IBM437"),
          Map.entry(0x02, "IBM850"),
          Map.entry(0x03, "windows-1252"),
          Map.entry(0x13, "Shift_JIS"),
          Map.entry(0x4D, "GBK"),
          Map.entry(0x4E, "MS949"),
          Map.entry(0x4F, "Big5"),
          Map.entry(0x57, "windows-1252"),
          Map.entry(0x58, "windows-1252"),
          Map.entry(0x64, "IBM852"),
          Map.entry(0x65, "IBM866"),
          Map.entry(0x66, "IBM865"),
          Map.entry(0x7D, "windows-1255"),
          Map.entry(0x7E, "windows-1256"),
          Map.entry(0xC8, "windows-1250"),
          Map.entry(0xC9, "windows-1251"),
          Map.entry(0xCA, "windows-1254"),
          Map.entry(0xCB, "windows-1253"),
          Map.entry(0xCC, "windows-1257"));

  private static final Charset WESTERN = Charset.forName("windows-1252");

  private final Charset known;

  private DbfText(Charset known) {
    this.known = known;
  }

  static DbfText of(ShapeFiles files, byte mark) throws IOException {
    try (InputStream in = files.open(".cpg")) {
      String said =
          in == null
              ? ""
              : new String(in.readNBytes(MOST_BYTES), StandardCharsets.ISO_8859_1)
                  .replace("\u00ef\u00bb\u00bf", "")
                  .strip();
      if (!said.isEmpty()) {
        return new DbfText(named(said, files.name()));
      }
    }
    String marked = MARKS.get(Byte.toUnsignedInt(mark));
    boolean there = marked != null && Charset.isSupported(marked);
    return new DbfText(there ? Charset.forName(marked) : null);
  }

  private static Charset named(String said, String file) {
    String plain = said.replaceFirst("(?i)^(ansi|cp|oem|windows)[ _-]?(?=\\d)", "");
    String name = plain;
    if (plain.matches("65001")) {
      name = "UTF-8";
    } else if (plain.matches("8859\\d{1,2}")) {
      name = "ISO-8859-" + plain.substring(4);
    } else if (plain.matches("88591")) {
      name = "ISO-8859-1";
    } else if (plain.matches("125\\d")) {
      name = "windows-" + plain;
    } else if (plain.matches("\\d{3}")) {
      name = "IBM" + plain;
    }
    try {
      return Charset.forName(name);
    } catch (IllegalArgumentException e) {
      throw new InputFault(
          Place.file(file.replaceFirst("(?i)\\.shp$", ".cpg")),
          "an unknown encoding \"" + said + "\"",
          "put its name there, such as UTF-8",
          e);
    }
  }

  /** Some bytes as text; what isn't valid becomes a replacement character. */
  String of(byte[] bytes, int from, int count) {
    if (known != null) {
      return new String(bytes, from, count, known);
    }
    try {
      return StandardCharsets.UTF_8
          .newDecoder()
          .onMalformedInput(CodingErrorAction.REPORT)
          .decode(ByteBuffer.wrap(bytes, from, count))
          .toString();
    } catch (CharacterCodingException e) {
      return new String(bytes, from, count, WESTERN);
    }
  }
}
