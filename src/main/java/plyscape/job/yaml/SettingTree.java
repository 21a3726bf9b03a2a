package plyscape.job.yaml;

import java.util.List;
import java.util.Map;
import plyscape.fault.InputFault;

/** Puts settings into the tree of a job, over what the file says. */
public final class SettingTree {

  private SettingTree() {}

  /**
   * Sets each in order; a later one wins.
   *
   * @throws InputFault if a value isn't YAML or a key can't be followed
   */
  public static void apply(YamlNode root, List<Setting> settings) {
    for (Setting setting : settings) {
      if (setting.key().isBlank()) {
        throw new InputFault(
            setting.keyPlace(), "no key", "wanted KEY=VALUE, such as panel.width=200");
      }
      set(root, setting.key().strip(), setting, setting.node());
    }
  }

  private static void set(YamlNode at, String rest, Setting setting, YamlNode value) {
    switch (at.kind()) {
      case MAPPING -> setKey(at, rest, setting, value);
      case LIST -> setItem(at, rest, setting, value);
      default ->
          throw new InputFault(
              setting.keyPlace(),
              "\"" + rest + "\" of " + at.found(),
              "there are no keys under a single value");
    }
  }

  private static void setKey(YamlNode at, String rest, Setting setting, YamlNode value) {
    int dot = rest.indexOf('.');
    String key = dot < 0 ? rest : rest.substring(0, dot);
    if (dot < 0) {
      at.put(key, setting.keyPlace(), value);
      return;
    }
    String below = rest.substring(dot + 1);
    YamlNode next = at.entries().get(key);
    if (next == null || next.kind() == YamlNode.Kind.NOTHING) {
      YamlNode.Kind kind =
          startsWithNumber(below) && !key.equals("where")
              ? YamlNode.Kind.LIST
              : YamlNode.Kind.MAPPING;
      next = new YamlNode(kind, setting.keyPlace(), null, "");
      at.put(key, setting.keyPlace(), next);
    }
    set(next, below, setting, value);
  }

  private static boolean startsWithNumber(String text) {
    return text.matches("\\d+(\\..*)?");
  }

  private static void setItem(YamlNode list, String rest, Setting setting, YamlNode value) {
    int end = endOfItem(list, rest);
    String item = rest.substring(0, end);
    int index = indexOf(list, item);
    if (index < 0 || index > list.items().size()) {
      throw new InputFault(
          setting.keyPlace(),
          "no entry \"" + item + "\"",
          "wanted its name or a number from 1 to "
              + (list.items().size() + 1)
              + " (the last adds one)");
    }
    boolean add = index == list.items().size();
    if (end == rest.length()) {
      if (add) {
        list.items().add(value);
      } else {
        list.items().set(index, value);
      }
      return;
    }
    if (add) {
      list.items().add(new YamlNode(YamlNode.Kind.MAPPING, setting.keyPlace(), null, ""));
    }
    set(list.items().get(index), rest.substring(end + 1), setting, value);
  }

  /**
   * Names may hold dots ("end mill 1.5"), so an entry's full name is tried before the first dot is
   * taken as the end.
   */
  private static int endOfItem(YamlNode list, String rest) {
    for (YamlNode item : list.items()) {
      String name = nameOf(item);
      if (!name.isEmpty() && (rest.equals(name) || rest.startsWith(name + "."))) {
        return name.length();
      }
    }
    int dot = rest.indexOf('.');
    return dot < 0 ? rest.length() : dot;
  }

  private static int indexOf(YamlNode list, String item) {
    for (int i = 0; i < list.items().size(); i++) {
      if (item.equals(nameOf(list.items().get(i)))) {
        return i;
      }
    }
    return item.matches("\\d{1,4}") ? Integer.parseInt(item) - 1 : -1;
  }

  private static String nameOf(YamlNode item) {
    if (item.kind() != YamlNode.Kind.MAPPING) {
      return "";
    }
    Map<String, YamlNode> entries = item.entries();
    return entries.containsKey("name") ? entries.get("name").text().strip() : "";
  }
}
