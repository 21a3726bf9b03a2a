package plyscape.cli.option;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import plyscape.layup.PanelPoint;
import plyscape.text.Template;

/** A place on the panel as it is typed, {@code 20,220}, mm from its lower left corner. */
public final class PlaceOption {

  private static final String NUMBER = "([+-]?\\d{1,5}(?:\\.\\d{1,6})?)";
  private static final Pattern PLACE =
      Pattern.compile("\\s*" + NUMBER + "\\s*[,;]\\s*" + NUMBER + "\\s*");

  private PlaceOption() {}

  /**
   * Reads one.
   *
   * @throws ParameterException if it isn't one, or lies farther than 50 mm outside the panel
   */
  public static PanelPoint of(CommandSpec spec, String option, String text, PanelSize panel) {
    Matcher m = PLACE.matcher(text);
    if (m.matches()) {
      double x = Double.parseDouble(m.group(1));
      double y = Double.parseDouble(m.group(2));
      if (Math.min(x, y) >= -50 && x <= panel.widthMm() + 50 && y <= panel.heightMm() + 50) {
        return new PanelPoint(x, y);
      }
    }
    throw new ParameterException(
        spec.commandLine(),
        Template.fill(
            "%s: found \"%s\"; wanted X,Y in mm on the panel of %s x %s mm, such as 20,220",
            option, text, panel.widthMm(), panel.heightMm()));
  }
}
