package plyscape.job.yaml;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.text.NearestName;
import plyscape.text.Template;

/**
 * Typed access to one mapping of a settings file. Made with the keys that it may have: any other is
 * a fault at once, so a typo is reported as a typo and not as a missing value. Every fault says
 * place, what was found and what was expected.
 */
public final class Keys {

  /** Longest name or text, letters: names go into reports and file names. */
  private static final int LONGEST_NAME = 200;

  private final YamlNode node;
  private final String path;

  private Keys(YamlNode node, String path) {
    this.node = node;
    this.path = path;
  }

  /**
   * The keys of a mapping.
   *
   * @param path where the mapping stands, "" for the root
   * @param known keys that it may have
   * @throws InputFault if it isn't a mapping or has another key
   */
  public static Keys of(YamlNode node, String path, String... known) {
    if (node.kind() != YamlNode.Kind.MAPPING) {
      throw new InputFault(
          node.place(),
          "found " + node.found(),
          "wanted keys with values; known are " + String.join(", ", known));
    }
    for (String key : node.entries().keySet()) {
      if (!Arrays.asList(known).contains(key)) {
        throw new InputFault(
            node.keyPlace(key),
            "unknown key \"" + key + "\"",
            key.matches("\\d+")
                ? "between braces a comma ends a value: write numbers with a point and no comma"
                : NearestName.hint(key, Arrays.asList(known)));
      }
    }
    return new Keys(node, path);
  }

  /** Whether the key is there with a value. */
  public boolean has(String key) {
    YamlNode value = node.entries().get(key);
    return value != null && value.kind() != YamlNode.Kind.NOTHING;
  }

  /** The key's value; a missing or empty one is a fault that says {@code wanted}. */
  public YamlNode required(String key, String wanted) {
    YamlNode value = node.entries().get(key);
    if (value == null) {
      Place place = node.place();
      Place named =
          place.file().isEmpty()
              ? place
              : new Place(place.file(), place.line(), place.column(), path);
      throw new InputFault(named, "the key \"" + key + "\" is missing", "wanted " + wanted);
    }
    return value(value, wanted);
  }

  /** The key's value, or null when the key isn't there; one without a value is a fault. */
  public YamlNode optional(String key, String wanted) {
    YamlNode value = node.entries().get(key);
    return value == null ? null : value(value, wanted);
  }

  private static YamlNode value(YamlNode value, String wanted) {
    if (value.kind() == YamlNode.Kind.NOTHING) {
      throw new InputFault(
          value.place(),
          "no value",
          "wanted " + wanted + "; a value that begins with # needs quotes");
    }
    return value;
  }

  /** A mapping under this one; an empty one when the key isn't there. */
  public Keys child(String key, String... known) {
    YamlNode value = optional(key, "keys with values; known are " + String.join(", ", known));
    if (value == null) {
      value = new YamlNode(YamlNode.Kind.MAPPING, node.place(), node.folder(), "");
    }
    return of(value, YamlText.join(path, key), known);
  }

  /** Entries of a list; empty when the key isn't there. */
  public List<YamlNode> list(String key, String wanted) {
    YamlNode value = optional(key, wanted);
    return value == null ? List.of() : listOf(value, wanted);
  }

  public static List<YamlNode> listOf(YamlNode value, String wanted) {
    if (value.kind() != YamlNode.Kind.LIST && value.items().isEmpty()) {
      throw new InputFault(value.place(), "found " + value.found(), "wanted " + wanted);
    }
    return value.items();
  }

  /** A number with its unit; the default when the key isn't there. */
  public double number(String key, double otherwise, Range range) {
    YamlNode value = optional(key, range.words());
    return value == null ? otherwise : range.check(value);
  }

  /** A number that must be there. */
  public double number(String key, Range range) {
    return range.check(required(key, range.words()));
  }

  /** A number, or null when the key isn't there. */
  public Double numberOrNull(String key, Range range) {
    YamlNode value = optional(key, range.words());
    return value == null ? null : range.check(value);
  }

  /** A text such as a name; the default when the key isn't there. */
  public String text(String key, String otherwise, String wanted) {
    YamlNode value = optional(key, wanted);
    return value == null ? otherwise : textOf(value, wanted);
  }

  /** A scalar's text, trimmed and not blank. */
  public static String textOf(YamlNode value, String wanted) {
    if (value.text().isBlank()) {
      throw new InputFault(value.place(), "found " + value.found(), "wanted " + wanted);
    }
    String text = value.text().strip();
    if (text.length() > LONGEST_NAME) {
      throw new InputFault(
          value.place(), "found " + text.length() + " letters", "wanted at most " + LONGEST_NAME);
    }
    return text;
  }

  /** An existing file that must be named. */
  public Path file(String key, String wanted) {
    YamlNode value = required(key, wanted);
    textOf(value, wanted);
    return InputFiles.resolve(value);
  }

  /** One of an enum's constants, written in small letters with hyphens. */
  public <E extends Enum<E>> E choice(String key, E otherwise, E[] values) {
    Function<E, String> word =
        constant -> constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    List<String> words = Arrays.stream(values).map(word).toList();
    YamlNode value = optional(key, "one of " + String.join(", ", words));
    return value == null ? otherwise : values[choiceOf(value, words)];
  }

  /** The index of the word that a scalar is. */
  public static int choiceOf(YamlNode value, List<String> words) {
    int index = value.isScalar() ? words.indexOf(value.text().strip()) : -1;
    if (index < 0) {
      String near =
          value.isScalar()
              ? NearestName.of(value.text(), words)
                  .map(word -> "did you mean \"" + word + "\"? ")
                  .orElse("")
              : "";
      throw new InputFault(
          value.place(),
          "found " + value.found(),
          near + "wanted one of " + String.join(", ", words));
    }
    return index;
  }

  /** Where a key's value stands, or the mapping when it isn't there. */
  public Place place(String key) {
    YamlNode value = node.entries().get(key);
    return value == null ? node.place() : value.place();
  }

  /** All keys to values, for mappings whose keys are free. */
  public static Map<String, YamlNode> freeKeys(YamlNode value, String wanted) {
    if (value.kind() != YamlNode.Kind.MAPPING) {
      throw new InputFault(value.place(), "found " + value.found(), "wanted " + wanted);
    }
    return value.entries();
  }

  /** A list of exactly {@code count} numbers. */
  public static List<Double> numbers(YamlNode value, int count, Range range, String wanted) {
    List<YamlNode> items = listOf(value, wanted);
    if (items.size() != count) {
      String found = value.text().isEmpty() ? "a list of " + items.size() : value.found();
      String hint = items.size() == 2 * count ? "; decimals take a point, not a comma" : "";
      throw new InputFault(value.place(), "found " + found, "wanted " + wanted + hint);
    }
    List<Double> out = new ArrayList<>();
    for (YamlNode item : items) {
      out.add(range.check(item));
    }
    return out;
  }

  /**
   * A sane range of a number, both ends included.
   *
   * @param unit for messages, such as {@code mm}; may be ""
   */
  public record Range(double least, double most, String unit, boolean whole) {

    public static Range mm(double least, double most) {
      return new Range(least, most, "mm", false);
    }

    public static Range of(double least, double most, String unit) {
      return new Range(least, most, unit, false);
    }

    public static Range whole(double least, double most, String unit) {
      return new Range(least, most, unit, true);
    }

    String words() {
      String in = unit.isEmpty() ? "" : unit + ", ";
      return Template.fill(
          "%s%s%.6t to %.6t", whole ? "a whole number, " : "a number, ", in, least, most);
    }

    public double check(YamlNode value) {
      Double number = value.kind() == YamlNode.Kind.PLAIN ? Decimal.parse(value.text()) : null;
      if (number == null || (whole && number != Math.rint(number))) {
        String hint =
            value.kind() != YamlNode.Kind.QUOTED ? NumberSlip.hint(value.text(), unit, whole) : "";
        throw new InputFault(value.place(), "found " + value.found(), "wanted " + words() + hint);
      }
      if (!(number >= least && number <= most)) {
        throw new InputFault(
            value.place(), "found " + value.text(), "out of the sane range: wanted " + words());
      }
      return number == 0 ? 0 : number; // no minus zero goes further
    }
  }
}
