package plyscape.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** The program's own text files for its pages. */
public final class Resources {

  private static final Map<String, String> TEXTS = new ConcurrentHashMap<>();

  private Resources() {}

  /** A file's text, LF at its lines' ends; each is read once. */
  public static String text(String name) {
    return TEXTS.computeIfAbsent(name, Resources::read);
  }

  private static String read(String name) {
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
