package plyscape.plan;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** The program's own version, as the build wrote it. */
public final class Version {

  /** Such as {@code 0.1.0}. */
  public static final String TEXT = read();

  private Version() {}

  private static String read() {
    try (InputStream in = Version.class.getResourceAsStream("/plyscape/version.properties")) {
      Properties properties = new Properties();
      properties.load(in);
      return properties.getProperty("version");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
