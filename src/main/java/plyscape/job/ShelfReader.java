package plyscape.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import plyscape.fault.InputFault;
import plyscape.job.yaml.Decimal;
import plyscape.job.yaml.Keys;
import plyscape.job.yaml.Keys.Range;
import plyscape.job.yaml.YamlNode;
import plyscape.job.yaml.YamlText;
import plyscape.layup.GlueLine;
import plyscape.layup.Shelf;
import plyscape.layup.Veneer;
import plyscape.text.NearestName;

/**
 * Reads a file of veneers: {@code name}, {@code plies}, {@code glue_line}, {@code
 * glue_line_tolerance}, {@code flatness}, {@code veneers} (each with name, colour, thickness,
 * tolerance, wood, count) and {@code zones} (zone name to veneer name).
 */
public final class ShelfReader {

  /** Kinds of sheets; a shop has dozens. */
  private static final int MOST_VENEERS = 200;

  private static final int MOST_SHEETS = 10_000;
  private static final String LIST =
      "a list of veneers, each with name, colour, thickness and count";

  /** What a starter layup has too (common practice, no source). */
  private static final GlueLine USUAL = new GlueLine(0.04, 0.01);

  private static final double USUAL_FLATNESS_MM = 0.08;

  private ShelfReader() {}

  /**
   * Reads a shelf.
   *
   * @throws InputFault if anything in it isn't as said above
   */
  public static Shelf read(Path file) {
    YamlNode root = YamlText.mappingOf(YamlText.read(file), "\"veneers:\" with " + LIST);
    Keys keys =
        Keys.of(
            root,
            "",
            "name",
            "plies",
            "glue_line",
            "glue_line_tolerance",
            "flatness",
            "veneers",
            "zones");
    List<Veneer> veneers = veneers(keys);
    Double plies = keys.numberOrNull("plies", Range.whole(1, 99, "plies"));
    return new Shelf(
        keys.text("name", LayupReader.stem(file), "a name"),
        plies == null ? null : plies.intValue(),
        new GlueLine(
            keys.number("glue_line", USUAL.thicknessMm(), Range.mm(0, 5)),
            keys.number("glue_line_tolerance", USUAL.toleranceMm(), Range.mm(0, 5))),
        keys.number("flatness", USUAL_FLATNESS_MM, Range.mm(0, 10)),
        veneers,
        wishes(keys, veneers));
  }

  private static List<Veneer> veneers(Keys keys) {
    YamlNode list = keys.required("veneers", LIST);
    List<YamlNode> items = Keys.listOf(list, LIST);
    if (items.isEmpty() || items.size() > MOST_VENEERS) {
      throw new InputFault(
          list.place(), "found " + items.size() + " veneers", "wanted 1 to " + MOST_VENEERS);
    }
    List<Veneer> veneers = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (YamlNode item : items) {
      veneers.add(veneer(item, veneers.size() + 1, names));
    }
    return List.copyOf(veneers);
  }

  private static Veneer veneer(YamlNode item, int number, Set<String> names) {
    Keys keys =
        Keys.of(
            item, "veneers." + number, "name", "colour", "thickness", "tolerance", "wood", "count");
    String name = name(keys, names);
    double thickness = keys.number("thickness", Range.mm(0.01, 50));
    double tolerance = keys.number("tolerance", 0, Range.mm(0, 10));
    if (tolerance > thickness) {
      throw new InputFault(
          keys.place("tolerance"),
          "a tolerance of " + tolerance + " mm for a veneer of " + thickness + " mm",
          "wanted no more than the thickness");
    }
    return new Veneer(
        name,
        LayupReader.rgb(keys.required("colour", LayupReader.COLOUR_WORDS)),
        thickness,
        tolerance,
        keys.text("wood", "", "text, such as poplar"),
        (int) keys.number("count", Range.whole(0, MOST_SHEETS, "sheets")));
  }

  /** A name that none before has, and that isn't a ply's number. */
  private static String name(Keys keys, Set<String> names) {
    YamlNode node = keys.required("name", "a name");
    String name = Keys.textOf(node, "a name");
    if (!names.add(name)) {
      throw new InputFault(
          node.place(), "a second veneer named \"" + name + "\"", "names must differ");
    }
    if (Decimal.parse(name) != null) {
      throw new InputFault(
          node.place(),
          "a veneer named \"" + name + "\"",
          "give a word: a ply's number would be meant by it");
    }
    return name;
  }

  private static List<Shelf.Wish> wishes(Keys keys, List<Veneer> veneers) {
    String wanted = "zone names with the veneer that each wants, such as {river: deep blue}";
    List<Shelf.Wish> wishes = new ArrayList<>();
    YamlNode node = keys.optional("zones", wanted);
    if (node != null) {
      List<String> names = veneers.stream().map(Veneer::name).toList();
      Keys.freeKeys(node, wanted)
          .forEach(
              (zone, value) -> {
                String veneer = Keys.textOf(value, "a veneer's name");
                if (!names.contains(veneer)) {
                  throw new InputFault(
                      value.place(),
                      "no veneer \"" + veneer + "\"",
                      NearestName.hint(veneer, names));
                }
                wishes.add(new Shelf.Wish(zone, veneer));
              });
    }
    return List.copyOf(wishes);
  }
}
