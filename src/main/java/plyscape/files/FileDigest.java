package plyscape.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import plyscape.fault.Place;

/**
 * A file and the SHA-256 (FIPS 180-4) of what stands in it. Immutable.
 *
 * @param path as an output names it, with {@code /}
 * @param sha256 64 hexadecimal digits
 */
public record FileDigest(String path, String sha256) {

  private static final int BUFFER = 1 << 16;

  /**
   * Reads a file through, a piece at a time.
   *
   * @param path what it is to be called
   * @throws plyscape.fault.InputFault if it can't be read
   */
  public static FileDigest of(Path file, String path) {
    return new FileDigest(path, InputCache.digest(file, () -> read(file)));
  }

  private static String read(Path file) {
    MessageDigest digest = start();
    try (InputStream in = Files.newInputStream(file)) {
      byte[] buffer = new byte[BUFFER];
      for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
        digest.update(buffer, 0, n);
      }
    } catch (IOException e) {
      throw InputFile.missing(file, Place.file(file.toString()), e);
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  /** The digest of a text in UTF-8. */
  public static String ofText(String text) {
    return HexFormat.of().formatHex(start().digest(text.getBytes(StandardCharsets.UTF_8)));
  }

  private static MessageDigest start() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
