package plyscape.job;

import java.util.ArrayList;
import java.util.List;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.job.yaml.Keys;
import plyscape.job.yaml.Keys.Range;
import plyscape.job.yaml.YamlNode;
import plyscape.machine.Clamping;
import plyscape.machine.CuttingData;
import plyscape.machine.Form;
import plyscape.machine.Tool;
import plyscape.text.Numbers;

/** Reads {@code tools} of a job; without any, the one of src/contract.md. */
final class ToolKeys {

  static final String WANTED = "a list of tools, each with keys such as name and diameter";
  private static final int MOST_TOOLS = 50;
  private static final Range FEED = Range.of(10, 50_000, "mm/min");
  private static final Tool.Spiral[] SPIRALS = {Tool.Spiral.UP_CUT, Tool.Spiral.DOWN_CUT};

  private ToolKeys() {}

  static List<Tool> read(Keys job) {
    List<YamlNode> items = job.list("tools", WANTED);
    if (items.size() > MOST_TOOLS) {
      throw new InputFault(
          job.place("tools"), "found " + items.size() + " tools", "wanted at most " + MOST_TOOLS);
    }
    List<Tool> tools = new ArrayList<>();
    for (YamlNode item : items) {
      Tool tool = tool(item, tools.size() + 1);
      if (tools.stream().anyMatch(other -> other.name().equals(tool.name()))) {
        YamlNode name = item.entries().get("name");
        Place place = name == null ? item.place() : name.place();
        throw new InputFault(
            place, "a second tool named \"" + tool.name() + "\"", "names must differ");
      }
      tools.add(tool);
    }
    if (tools.isEmpty()) {
      YamlNode none = new YamlNode(YamlNode.Kind.MAPPING, Place.file(""), null, "");
      tools.add(tool(none, 1));
    }
    return tools;
  }

  private static Tool tool(YamlNode item, int number) {
    Keys keys =
        Keys.of(
            item,
            "tools." + number,
            "name",
            "shape",
            "diameter",
            "flute_length",
            "flutes",
            "rpm",
            "feed",
            "thin_feed",
            "plunge",
            "stepdown",
            "stepover",
            "tip_diameter",
            "taper",
            "shank_diameter",
            "stickout",
            "holder_diameter",
            "spiral");
    Form form = form(keys);
    return new Tool(
        keys.text("name", "end mill " + Numbers.trimmed(form.diameterMm(), 3), "a name"),
        form,
        cutting(keys, form.fluteLengthMm()),
        new Clamping(
            keys.number("shank_diameter", 0, Range.mm(0.1, 100)),
            keys.number("stickout", 0, Range.mm(1, 400)),
            keys.number("holder_diameter", 0, Range.mm(1, 300))));
  }

  private static Form form(Keys keys) {
    Form usual = Tool.USUAL.form();
    double diameter = keys.number("diameter", usual.diameterMm(), Range.mm(0.05, 60));
    return new Form(
        keys.choice("shape", usual.shape(), Tool.Shape.values()),
        diameter,
        keys.number("flute_length", usual.fluteLengthMm(), Range.mm(0.1, 300)),
        (int) keys.number("flutes", usual.flutes(), Range.whole(1, 20, "")),
        keys.number("tip_diameter", 0, Range.mm(0, diameter)),
        keys.number("taper", 0, Range.of(0.1, 85, "degrees between side and axis")),
        keys.choice("spiral", Tool.Spiral.UNSAID, SPIRALS));
  }

  private static CuttingData cutting(Keys keys, double fluteMm) {
    CuttingData usual = Tool.USUAL.cutting();
    double stepdown = keys.number("stepdown", usual.stepdownMm(), Range.mm(0.005, 60));
    if (stepdown > fluteMm) {
      throw new InputFault(
          keys.place(keys.has("stepdown") ? "stepdown" : "flute_length"),
          "a stepdown of " + stepdown + " mm with flutes of " + fluteMm + " mm",
          "wanted a stepdown no longer than the flutes");
    }
    double feed = keys.number("feed", usual.feedMmPerMin(), FEED);
    Double thin = keys.numberOrNull("thin_feed", FEED);
    if (thin != null && thin < feed) {
      throw new InputFault(
          keys.place("thin_feed"),
          "a feed of " + thin + " mm/min for thin bites, under the feed of " + feed,
          "wanted at least the feed, or no thin_feed");
    }
    return new CuttingData(
        keys.number("rpm", usual.rpm(), Range.of(100, 200_000, "turns/min")),
        feed,
        keys.number("plunge", usual.plungeMmPerMin(), Range.of(5, 50_000, "mm/min")),
        stepdown,
        keys.number(
            "stepover", usual.stepover(), Range.of(0.01, 1, "as a fraction of the diameter")),
        thin == null ? 0 : thin);
  }
}
