package plyscape.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.job.yaml.Decimal;
import plyscape.job.yaml.Keys;
import plyscape.job.yaml.Keys.Range;
import plyscape.job.yaml.YamlNode;
import plyscape.job.yaml.YamlText;
import plyscape.layup.GlueLine;
import plyscape.layup.Layup;
import plyscape.layup.Ply;

/**
 * Reads {@code layup.yaml} (src/contract.md, section 5). Checks form, ranges and names; how depths
 * follow from it, and whether measured ones agree, is the business of {@code layup}.
 */
public final class LayupReader {

  /**
   * More plies than any press would take; keeps a wrong file from costing memory, and lets planner
   * and simulation hold a ply's place in a byte a cell.
   */
  private static final int MOST_PLIES = Byte.MAX_VALUE;

  private static final Range THICKNESS = Range.mm(0.01, 25);
  private static final Range TOLERANCE = Range.mm(0, 5);
  private static final Range GLUE_LINE = Range.mm(0, 2);
  private static final Range GRAIN = Range.of(-360, 360, "degrees");
  private static final Pattern COLOUR = Pattern.compile("#([0-9a-fA-F]{6}|[0-9a-fA-F]{3})");
  static final String COLOUR_WORDS = "a colour in quotes, such as \"#8fbf5a\"";

  private LayupReader() {}

  /**
   * Reads a layup.
   *
   * @throws InputFault if there is no such file, it isn't YAML, or something in it isn't as
   *     src/contract.md says
   */
  public static Layup read(Path file) {
    return layup(file, YamlText.read(file));
  }

  /** The same for a text that isn't in its file yet. */
  public static Layup of(Path file, String text) {
    return layup(file, YamlText.of(file, text));
  }

  static Layup layup(Path file, YamlNode tree) {
    YamlNode root = YamlText.mappingOf(tree, "\"plies:\" with a list of plies, top to bottom");
    if (root.entries().containsKey("terrain") && !root.entries().containsKey("plies")) {
      throw new InputFault(
          Place.file(file.toString()), "a job, not a layup", "give the layup that it names");
    }
    Keys keys =
        Keys.of(
            root,
            "",
            "name",
            "glue_line",
            "glue_line_tolerance",
            "measured_thickness",
            "measured_thickness_tolerance",
            "measured_bottoms",
            "measured_bottoms_tolerance",
            "measured_at",
            "measured_places",
            "press_taper",
            "press_bow",
            "flatness",
            "plies");
    List<Ply> plies = plies(keys);
    return new Layup(
        file.toString(),
        keys.text("name", stem(file), "a name"),
        plies,
        new GlueLine(
            keys.number("glue_line", 0, GLUE_LINE),
            keys.number("glue_line_tolerance", 0, GLUE_LINE)),
        MeasuredKeys.read(keys, new PlyNames(plies)),
        keys.number("flatness", 0, TOLERANCE));
  }

  static String stem(Path file) {
    String name = file.getFileName() == null ? "" : file.getFileName().toString();
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(0, dot) : name;
  }

  private static List<Ply> plies(Keys keys) {
    YamlNode list = keys.required("plies", "a list of plies, top to bottom");
    List<YamlNode> items = Keys.listOf(list, "a list of plies, top to bottom");
    if (items.isEmpty() || items.size() > MOST_PLIES) {
      throw new InputFault(
          list.place(), "found " + items.size() + " plies", "wanted 1 to " + MOST_PLIES);
    }
    List<Ply> plies = new ArrayList<>();
    Map<String, Place> places = new HashMap<>();
    for (YamlNode item : items) {
      Ply ply = ply(item, plies.size() + 1);
      Place place = item.entries().get("name").place();
      Place first = places.putIfAbsent(ply.name(), place);
      if (first != null) {
        throw new InputFault(
            place,
            "a second ply named \"" + ply.name() + "\", the first in line " + first.line(),
            "names must differ");
      }
      plies.add(ply);
    }
    return plies;
  }

  private static Ply ply(YamlNode item, int number) {
    Keys keys =
        Keys.of(
            item, "plies." + number, "name", "colour", "thickness", "tolerance", "grain", "wood");
    YamlNode nameNode = keys.required("name", "a name");
    String name = Keys.textOf(nameNode, "a name");
    Double asNumber = Decimal.parse(name);
    if (asNumber != null && asNumber != number) {
      throw new InputFault(
          nameNode.place(),
          "ply " + number + " is named \"" + name + "\"",
          "a number would be taken for the ply at that place; give a word, or its own number");
    }
    double thickness = keys.number("thickness", THICKNESS);
    double tolerance = keys.number("tolerance", 0, TOLERANCE);
    if (tolerance > thickness) {
      throw new InputFault(
          keys.place("tolerance"),
          "a tolerance of " + tolerance + " mm for a ply of " + thickness + " mm",
          "wanted no more than the thickness; it is plus or minus, in mm");
    }
    return new Ply(
        number,
        name,
        rgb(keys.required("colour", COLOUR_WORDS)),
        thickness,
        tolerance,
        keys.number("grain", 0, GRAIN),
        keys.text("wood", "", "text, such as poplar"));
  }

  static int rgb(YamlNode node) {
    String text = node.isScalar() ? node.text().strip() : "";
    if (!COLOUR.matcher(text).matches()) {
      throw new InputFault(node.place(), "found " + node.found(), "wanted " + COLOUR_WORDS);
    }
    String digits = text.substring(1);
    return Integer.parseInt(digits.length() == 3 ? digits.replaceAll("(.)", "$1$1") : digits, 16);
  }
}
