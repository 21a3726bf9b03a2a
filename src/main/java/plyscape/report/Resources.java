package plyscape.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The program's own text files for its pages. */
public final class Resources {

  private Resources() {}

  /** A file's text, LF at its lines' ends. */
  public static String text(String name) {
    try (InputStream in = Resources.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its own file " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
