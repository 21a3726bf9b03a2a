package plyscape.job;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import plyscape.fault.InputFault;
import plyscape.job.yaml.Decimal;
import plyscape.job.yaml.Keys;
import plyscape.job.yaml.YamlNode;

/** Reads {@code where}: which features of a map are meant, by their properties. */
final class WhereKeys {

  private static final String WANTED =
      "property names with a value, a list of values, {min: 2, max: 4}, {exists: true} or {not:"
          + " value}";

  private WhereKeys() {}

  /** Property names to accepted values; empty when the key isn't there. */
  static SortedMap<String, List<Object>> read(Keys keys) {
    SortedMap<String, List<Object>> out = new TreeMap<>();
    YamlNode node = keys.optional("where", WANTED);
    if (node == null) {
      return out;
    }
    for (Map.Entry<String, YamlNode> entry : Keys.freeKeys(node, WANTED).entrySet()) {
      out.put(entry.getKey(), values(entry.getValue()));
    }
    return out;
  }

  private static List<Object> values(YamlNode value) {
    List<Object> accepted = new ArrayList<>();
    for (YamlNode one : value.kind() == YamlNode.Kind.LIST ? value.items() : List.of(value)) {
      accepted.add(one.kind() == YamlNode.Kind.MAPPING ? test(one) : scalar(one));
    }
    if (accepted.isEmpty()) {
      throw new InputFault(value.place(), "an empty list", "wanted at least one value");
    }
    return Collections.unmodifiableList(accepted);
  }

  private static Object test(YamlNode node) {
    Keys keys = Keys.of(node, "where", "min", "max", "exists", "not");
    int kinds =
        (keys.has("min") || keys.has("max") ? 1 : 0)
            + (keys.has("exists") ? 1 : 0)
            + (keys.has("not") ? 1 : 0);
    if (kinds != 1) {
      throw new InputFault(
          node.place(),
          "a test that says " + (kinds == 0 ? "nothing" : "two things"),
          "wanted " + WANTED);
    }
    if (keys.has("not")) {
      return new ZoneSpec.Not(values(keys.required("not", WANTED)));
    }
    if (keys.has("exists")) {
      Object wanted = scalar(keys.required("exists", "true or false"));
      if (wanted instanceof Boolean yes) {
        return new ZoneSpec.Present(yes);
      }
      throw new InputFault(keys.place("exists"), "found " + wanted, "wanted true or false");
    }
    Double least = number(keys, "min");
    Double most = number(keys, "max");
    if (least != null && most != null && least > most) {
      throw new InputFault(
          keys.place("max"), "a max below the min", "wanted the lower number as min");
    }
    return new ZoneSpec.Between(least, most);
  }

  private static Double number(Keys keys, String key) {
    if (!keys.has(key)) {
      return null;
    }
    Object value = scalar(keys.required(key, "a number"));
    if (value instanceof Double number) {
      return number;
    }
    throw new InputFault(keys.place(key), "found \"" + value + "\"", "wanted a number");
  }

  /** A Double, Boolean or String; quotes make a String of anything. */
  private static Object scalar(YamlNode value) {
    if (!value.isScalar()) {
      throw new InputFault(value.place(), "found " + value.found(), "wanted " + WANTED);
    }
    if (value.kind() == YamlNode.Kind.QUOTED) {
      return value.text();
    }
    Double number = Decimal.parse(value.text());
    if (number != null) {
      return number;
    }
    return switch (value.text()) {
      case "true" -> true;
      case "false" -> false;
      default -> value.text();
    };
  }
}
