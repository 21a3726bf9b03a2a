package plyscape.job.yaml;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import plyscape.fault.Place;

/**
 * One node of a settings file: a mapping, a list or a scalar's text, with the place where it
 * stands. Settings given on the command line are put into the tree before anyone reads it, so that
 * they meet the same checks.
 */
public final class YamlNode {

  /** What a node is. A plain scalar stands without quotes. */
  public enum Kind {
    MAPPING("a mapping of keys"),
    LIST("a list"),
    PLAIN("a value"),
    QUOTED("text in quotes"),
    NOTHING("nothing");

    final String words;

    Kind(String words) {
      this.words = words;
    }
  }

  private final Kind kind;
  private final Place place;
  private final Path folder;
  private final String text;
  private final Map<String, YamlNode> entries = new LinkedHashMap<>();
  private final Map<String, Place> keyPlaces = new LinkedHashMap<>();
  private final List<YamlNode> items = new ArrayList<>();

  /**
   * A node without content yet.
   *
   * @param folder what relative paths in it are relative to; may be null for the current directory
   */
  public YamlNode(Kind kind, Place place, Path folder, String text) {
    this.kind = kind;
    this.place = place;
    this.folder = folder;
    this.text = text;
  }

  public Kind kind() {
    return kind;
  }

  public Place place() {
    return place;
  }

  public Path folder() {
    return folder;
  }

  /** A scalar's text without quotes, or what a table's cell holds; "" for others. */
  public String text() {
    return text;
  }

  public boolean isScalar() {
    return kind == Kind.PLAIN || kind == Kind.QUOTED;
  }

  /** Keys to values in the order of the file. */
  public Map<String, YamlNode> entries() {
    return entries;
  }

  /** Where a key stands. */
  public Place keyPlace(String key) {
    return keyPlaces.getOrDefault(key, place);
  }

  /** Entries of a list, or of a table's cell that may be one. */
  public List<YamlNode> items() {
    return items;
  }

  /** Sets a key of a mapping. */
  public void put(String key, Place keyPlace, YamlNode value) {
    entries.put(key, value);
    keyPlaces.put(key, keyPlace);
  }

  /** What was found, for a message: {@code "abc"}, {@code a list}. */
  public String found() {
    if (text.isEmpty() && !isScalar()) {
      return kind.words;
    }
    String shown = text.length() > 60 ? text.substring(0, 57) + "..." : text;
    return "\"" + shown + "\"" + (kind == Kind.QUOTED ? " in quotes" : "");
  }
}
