package plyscape.zones.map;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import plyscape.fault.InputFault;

/**
 * How a file begins, by which its format is known. Immutable.
 *
 * @param bytes its first bytes, at most {@value #MOST_BYTES}
 */
public record MapHead(Path file, byte[] bytes) {

  /** Enough for a root element behind a declaration and a long comment. */
  private static final int MOST_BYTES = 4096;

  /** Reads the first bytes of a file. */
  public static MapHead of(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      return new MapHead(file, in.readNBytes(MOST_BYTES));
    } catch (IOException e) {
      throw InputFault.unreadable(file.toString(), e);
    }
  }

  /** Whether the file begins with these bytes. */
  public boolean startsWith(byte[] magic) {
    return bytes.length >= magic.length
        && Arrays.equals(bytes, 0, magic.length, magic, 0, magic.length);
  }

  /** Whether the file's name ends so, letter case aside. */
  public boolean endsWith(String ending) {
    return file.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(ending);
  }

  /**
   * The name of the root element, without prefix, of what begins like XML in any encoding that has
   * ASCII's letters in their places, or in UTF-16; "" for anything else.
   */
  public String rootElement() {
    String text = new String(bytes, StandardCharsets.ISO_8859_1).replace("\0", "");
    int at = text.indexOf('<');
    if (at < 0
        || !text.substring(0, at).replaceAll("[\u00ef\u00bb\u00bf\u00fe\u00ff]", "").isBlank()) {
      return "";
    }
    while (at >= 0 && at + 1 < text.length()) {
      char next = text.charAt(at + 1);
      if (next == '!' && text.startsWith("<!--", at)) {
        at = text.indexOf("-->", at);
      } else if (next != '?' && next != '!') {
        String name = text.substring(at + 1).split("[\\s/>]", 2)[0];
        return name.substring(name.indexOf(':') + 1);
      }
      at = at < 0 ? -1 : text.indexOf('<', at + 1);
    }
    return "";
  }
}
