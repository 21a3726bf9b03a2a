package plyscape.job;

import java.util.List;
import java.util.Set;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.job.yaml.Keys;
import plyscape.job.yaml.Keys.Range;
import plyscape.job.yaml.YamlNode;

/**
 * The line along which the piece is cut free, after everything else. Immutable.
 *
 * @param shape what the line is
 * @param tabs how many tabs hold the piece, and their size
 * @param allowanceMm between the line and the cut
 * @param throughMm below the panel's bottom, into the spoil board
 * @param toolName of the cutter; null for the planner's choice
 * @param place where the job says so
 */
public record OutlineSpec(
    Shape shape, Tabs tabs, double allowanceMm, double throughMm, String toolName, Place place) {

  private static final String WANTED =
      "panel, corners [x, y, x, y, ...] in mm on the panel, or {file: piece.geojson}";

  /** What a line is: exactly one of a list of corners and a map, or neither for the panel. */
  public record Shape(List<Double> corners, MapPick map) {

    /** The panel's own edges. */
    public boolean panel() {
      return corners == null && map == null;
    }
  }

  /** Tabs: how many, their width along the line, their height over the panel's bottom. */
  public record Tabs(int count, double widthMm, double heightMm) {

    /** Checks ranges. */
    public Tabs {
      if (count < 0 || !(widthMm > 0) || !(heightMm > 0)) {
        throw new IllegalArgumentException("no tabs: " + count + ", " + widthMm + " mm");
      }
    }
  }

  /** Reads the key {@code outline} of a job; null when it isn't there. */
  static OutlineSpec read(Keys job, Set<String> tools) {
    if (!job.has("outline")) {
      return null;
    }
    Keys keys =
        job.child(
            "outline", "shape", "tabs", "tab_width", "tab_height", "allowance", "through", "tool");
    String tool = keys.has("tool") ? keys.text("tool", "", "a cutter's name") : null;
    if (tool != null && !tools.contains(tool)) {
      throw new InputFault(
          keys.place("tool"),
          "no cutter \"" + tool + "\" among the tools",
          "wanted one of " + String.join(", ", tools));
    }
    return new OutlineSpec(
        shape(keys),
        new Tabs(
            (int) keys.number("tabs", 4, Range.whole(0, 100, "tabs")),
            keys.number("tab_width", 6, Range.mm(0.5, 200)),
            keys.number("tab_height", 1.5, Range.mm(0.1, 50))),
        keys.number("allowance", 0.1, Range.mm(0, 20)),
        keys.number("through", 0.3, Range.mm(0, 5)),
        tool,
        job.place("outline"));
  }

  private static Shape shape(Keys outline) {
    YamlNode node = outline.optional("shape", WANTED);
    if (node == null || node.isScalar() && node.text().strip().equals("panel")) {
      return new Shape(null, null);
    }
    if (node.kind() == YamlNode.Kind.MAPPING) {
      Keys keys = Keys.of(node, "outline.shape", "file", "layer", "where");
      return new Shape(null, ZoneKeys.map(keys, "a map file with the piece's polygon"));
    }
    List<YamlNode> items = Keys.listOf(node, WANTED);
    if (items.size() < 6 || items.size() % 2 != 0) {
      throw new InputFault(
          node.place(), "found a list of " + items.size(), "wanted " + WANTED + ", three or more");
    }
    return new Shape(items.stream().map(i -> Range.mm(0, 10_000).check(i)).toList(), null);
  }
}
