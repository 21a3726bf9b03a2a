package plyscape.cli;

import picocli.CommandLine.IVersionProvider;
import plyscape.plan.Version;

/**
 * The program's version, as the build wrote it, for {@code --version} and for reports of faults.
 */
final class VersionText implements IVersionProvider {

  static String text() {
    return Version.TEXT;
  }

  @Override
  public String[] getVersion() {
    return new String[] {"plyscape " + text()};
  }
}
