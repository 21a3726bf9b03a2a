package plyscape.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The program's version, as the build wrote it, for {@code --version} and for reports of faults. */
final class VersionText implements IVersionProvider {

  static String text() {
    try (InputStream in = VersionText.class.getResourceAsStream("/plyscape/version.properties")) {
      Properties properties = new Properties();
      properties.load(in);
      return properties.getProperty("version");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public String[] getVersion() {
    return new String[] {"plyscape " + text()};
  }
}
