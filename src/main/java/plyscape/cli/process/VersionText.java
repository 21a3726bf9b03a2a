package plyscape.cli.process;

import picocli.CommandLine.IVersionProvider;
import plyscape.plan.Version;
import plyscape.text.Template;

/**
 * The program's version, as the build wrote it, for {@code --version} and for reports of faults.
 */
public final class VersionText implements IVersionProvider {

  public static String text() {
    return Version.TEXT;
  }

  /** Version, commit, Java and system: what a report of a fault needs. */
  static String full() {
    return Template.fill(
        "plyscape %s (commit %s), Java %s, %s %s",
        text(),
        Version.COMMIT,
        System.getProperty("java.version"),
        System.getProperty("os.name"),
        System.getProperty("os.arch"));
  }

  @Override
  public String[] getVersion() {
    return new String[] {full()};
  }
}
