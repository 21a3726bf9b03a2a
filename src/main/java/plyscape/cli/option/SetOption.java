package plyscape.cli.option;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import plyscape.job.yaml.Setting;

/** Reads what {@code --set KEY=VALUE} was given. */
public final class SetOption {

  private SetOption() {}

  /**
   * The settings, in the order given.
   *
   * @param example of an assignment, for the message
   * @throws ParameterException if one has no key or no equals sign
   */
  public static List<Setting> read(CommandSpec spec, List<String> assignments, String example) {
    List<Setting> settings = new ArrayList<>();
    for (String assignment : assignments) {
      int equals = assignment.indexOf('=');
      if (equals < 1) {
        throw new ParameterException(
            spec.commandLine(),
            "found --set \"" + assignment + "\"; wanted KEY=VALUE, such as " + example);
      }
      String key = assignment.substring(0, equals);
      settings.add(new Setting(key, assignment.substring(equals + 1), "--set " + key));
    }
    return settings;
  }
}
