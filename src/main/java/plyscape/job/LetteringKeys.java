package plyscape.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import plyscape.fault.InputFault;
import plyscape.job.yaml.Keys;
import plyscape.job.yaml.Keys.Range;
import plyscape.job.yaml.YamlNode;

/** Reads {@code lettering}, {@code scale_bar} and {@code north} of a job. */
final class LetteringKeys {

  private static final Range PANEL = Range.mm(-10, 10_000);
  private static final Range HEIGHT = Range.mm(0.5, 500);
  private static final int MOST = 1000;

  private final PlyNames plies;

  private LetteringKeys(PlyNames plies) {
    this.plies = plies;
  }

  static LetteringSpec read(Keys job, PlyNames plies) {
    return new LetteringKeys(plies).read(job);
  }

  private LetteringSpec read(Keys job) {
    List<YamlNode> items = job.list("lettering", "a list of texts, each with text and at, or file");
    if (items.size() > MOST) {
      throw new InputFault(
          job.place("lettering"), "found " + items.size() + " texts", "wanted at most " + MOST);
    }
    List<LetteringSpec.Text> texts = new ArrayList<>();
    List<LetteringSpec.Names> names = new ArrayList<>();
    for (int i = 0; i < items.size(); i++) {
      YamlNode item = items.get(i);
      String path = "lettering." + (i + 1);
      if (item.kind() == YamlNode.Kind.MAPPING && item.entries().containsKey("file")) {
        names.add(names(item, path));
      } else {
        texts.add(text(item, path));
      }
    }
    return new LetteringSpec(texts, names, scaleBar(job), north(job));
  }

  private LetteringSpec.Text text(YamlNode item, String path) {
    Keys keys =
        Keys.of(item, path, "text", "at", "height", "ply", "sink", "align", "angle", "font");
    return new LetteringSpec.Text(
        Keys.textOf(keys.required("text", "a line of text"), "a line of text"),
        spot(keys),
        keys.choice("align", LetteringSpec.End.LEFT, LetteringSpec.End.values()),
        keys.number("angle", 0, Range.of(-360, 360, "degrees")),
        style(keys, item, keys.number("height", HEIGHT)));
  }

  private LetteringSpec.Names names(YamlNode item, String path) {
    Keys keys =
        Keys.of(
            item,
            path,
            "file",
            "layer",
            "where",
            "property",
            "height",
            "ply",
            "sink",
            "offset",
            "font");
    MapPick map = ZoneKeys.map(keys, "a map file with points, such as places.geojson");
    return new LetteringSpec.Names(
        LayupReader.stem(map.file()),
        map,
        keys.text("property", "name", "the property that holds the name"),
        keys.number("offset", 1.5, Range.mm(0, 200)),
        style(keys, item, keys.number("height", HEIGHT)));
  }

  private LetteringSpec.ScaleBar scaleBar(Keys job) {
    if (!job.has("scale_bar")) {
      return null;
    }
    YamlNode item = job.required("scale_bar", "at, length and ply");
    Keys keys = Keys.of(item, "scale_bar", "at", "length", "height", "ply", "sink", "font");
    return new LetteringSpec.ScaleBar(
        spot(keys),
        keys.number("length", Range.of(0.001, 1e7, "m on the ground")),
        style(keys, item, keys.number("height", 5, HEIGHT)));
  }

  private LetteringSpec.North north(Keys job) {
    if (!job.has("north")) {
      return null;
    }
    YamlNode item = job.required("north", "at, height and ply");
    Keys keys = Keys.of(item, "north", "at", "height", "ply", "sink", "font");
    return new LetteringSpec.North(
        spot(keys), style(keys, item, keys.number("height", 20, HEIGHT)));
  }

  private static LetteringSpec.Spot spot(Keys keys) {
    String wanted = "a place on the panel: [x, y] in mm from its lower left corner";
    YamlNode at = keys.required("at", wanted);
    List<Double> numbers = Keys.numbers(at, 2, PANEL, wanted);
    return new LetteringSpec.Spot(numbers.get(0), numbers.get(1), at.place());
  }

  private LetterStyle style(Keys keys, YamlNode item, double heightMm) {
    if (keys.has("ply") == keys.has("sink")) {
      throw new InputFault(
          item.place(),
          keys.has("ply") ? "letters with both \"ply\" and \"sink\"" : "letters without a ply",
          "wanted exactly one of ply: a ply's name, and sink: plies below the terrain's");
    }
    Double sink = keys.numberOrNull("sink", Range.whole(1, 500, "plies below the terrain's"));
    Path font = keys.has("font") ? keys.file("font", "a TrueType font's file, .ttf") : null;
    return new LetterStyle(
        heightMm,
        sink == null ? plies.number(keys.required("ply", "a ply's name")) : null,
        sink == null ? null : sink.intValue(),
        font);
  }
}
