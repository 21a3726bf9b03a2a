package plyscape.job.yaml;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import plyscape.fault.InputFault;
import plyscape.fault.Place;

/**
 * A cell of a table as a value of a job. A cell is typed into a spreadsheet by people who know
 * nothing of YAML: a text needs no quotes whatever signs are in it, and where a list is wanted its
 * entries are parted by commas. Only between brackets or braces it is read as YAML.
 */
public final class CellValue {

  private CellValue() {}

  /**
   * The value.
   *
   * @param folder that files named in it are looked for in; null for the current one
   */
  public static YamlNode of(String cell, Place place, Path folder) {
    String text = cell.strip();
    if (between(text, "[", "]") || between(text, "{", "}")) {
      try {
        return YamlText.value(text, place, folder);
      } catch (InputFault e) {
        return plain(YamlNode.Kind.PLAIN, text, place, folder); // "[sic]: a name" is a text, too
      }
    }
    List<YamlNode> parts =
        Stream.of(text.split(",", -1))
            .map(part -> plain(YamlNode.Kind.PLAIN, part.strip(), place, folder))
            .toList();
    boolean numbers =
        parts.size() > 1 && parts.stream().allMatch(part -> Decimal.parse(part.text()) != null);
    YamlNode value = plain(numbers ? YamlNode.Kind.LIST : YamlNode.Kind.PLAIN, text, place, folder);
    value.items().addAll(parts);
    return value;
  }

  private static boolean between(String text, String start, String end) {
    return text.startsWith(start) && text.endsWith(end);
  }

  private static YamlNode plain(YamlNode.Kind kind, String text, Place place, Path folder) {
    return new YamlNode(kind, place, folder, text);
  }
}
