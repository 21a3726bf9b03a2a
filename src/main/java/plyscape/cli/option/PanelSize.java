package plyscape.cli.option;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** A size as it is typed, {@code 260x260}, mm. */
public record PanelSize(double widthMm, double heightMm) {

  private static final Pattern SIZE =
      Pattern.compile(
          "\\s*([0-9]{1,6}(?:\\.[0-9]{1,6})?)\\s*[xX\u00d7]\\s*([0-9]{1,6}(?:\\.[0-9]{1,6})?)\\s*(?:mm)?\\s*");

  /**
   * Reads one.
   *
   * @throws ParameterException if it isn't one, or a side isn't within 5 to 5000 mm
   */
  public static PanelSize of(CommandSpec spec, String option, String text) {
    Matcher m = SIZE.matcher(text);
    if (m.matches()) {
      PanelSize size =
          new PanelSize(Double.parseDouble(m.group(1)), Double.parseDouble(m.group(2)));
      if (Math.min(size.widthMm, size.heightMm) >= 5
          && Math.max(size.widthMm, size.heightMm) <= 5000) {
        return size;
      }
    }
    throw new ParameterException(
        spec.commandLine(),
        option
            + ": found \""
            + text
            + "\"; wanted WIDTHxHEIGHT in mm, such as 260x260, each 5 to 5000");
  }

  /** Checks that a number given by an option lies within its range. */
  public static void requireRange(
      CommandSpec spec, String option, Double value, double least, double greatest) {
    if (value != null && !(value >= least && value <= greatest)) {
      throw new ParameterException(
          spec.commandLine(),
          option + ": found " + value + "; wanted " + least + " to " + greatest);
    }
  }
}
