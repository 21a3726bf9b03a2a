package plyscape.batch;

import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Names that can be a folder's on any system, so that a series may be planned on one and cut from
 * another. What Windows forbids: <a
 * href="https://learn.microsoft.com/windows/win32/fileio/naming-a-file">Naming Files, Paths, and
 * Namespaces</a>.
 */
final class FolderName {

  /** Most file systems take 255 bytes; the hidden names of an output in the making add some. */
  private static final int MOST_BYTES = 200;

  private static final Pattern FORBIDDEN = Pattern.compile("[<>:\"/\\\\|?*\\p{Cntrl}]");
  private static final Pattern DEVICE =
      Pattern.compile("(?i)(con|prn|aux|nul|com[0-9]|lpt[0-9])(\\..*)?");

  /** What a batch itself writes beside the folders. */
  private static final Pattern TAKEN = Pattern.compile("(?i)index\\.html|batch(-.*)?\\.json");

  private FolderName() {}

  /** Why it can't be one, a clause; "" when it can. */
  static String trouble(String name) {
    if (FORBIDDEN.matcher(name).find()) {
      return "a folder's name has none of / \\ < > : \" | ? *";
    }
    if (name.startsWith(".") || name.endsWith(".")) {
      return "a folder's name begins and ends with no point";
    }
    if (DEVICE.matcher(name).matches()) {
      return "Windows keeps that name for itself";
    }
    if (TAKEN.matcher(name).matches()) {
      return "the series writes a file of that name";
    }
    int bytes = name.getBytes(StandardCharsets.UTF_8).length;
    return bytes > MOST_BYTES ? "a folder's name has at most " + MOST_BYTES + " bytes" : "";
  }

  /** The same for two names that some system takes for one. */
  static String folded(String name) {
    String composed = Normalizer.normalize(name, Normalizer.Form.NFC);
    return composed.toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
  }
}
