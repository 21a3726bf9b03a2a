package plyscape.plan;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** The program's own version, as the build wrote it. */
public final class Version {

  private static final Properties BUILT = read();

  /** Such as {@code 0.2.0}. */
  public static final String TEXT = BUILT.getProperty("version");

  /**
   * The commit of the sources: ten hexadecimal digits, with {@code -dirty} where a file differed
   * from it, or {@code unknown} where they weren't under git or no build filled it in. Never part
   * of an output, which depends on input and version alone.
   */
  public static final String COMMIT = filled(BUILT.getProperty("commit", ""));

  private Version() {}

  private static String filled(String property) {
    return property.isEmpty() || property.startsWith("$") ? "unknown" : property;
  }

  private static Properties read() {
    try (InputStream in = Version.class.getResourceAsStream("/plyscape/version.properties")) {
      Properties properties = new Properties();
      properties.load(in);
      return properties;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
