package plyscape.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import plyscape.fault.InputFault;
import plyscape.job.yaml.Keys;
import plyscape.job.yaml.Keys.Range;
import plyscape.job.yaml.YamlNode;
import plyscape.layup.Bottoms;
import plyscape.layup.Measured;
import plyscape.layup.MeasuredPlace;
import plyscape.layup.PanelPoint;

/** Reads what a layup file says was measured on the pressed panel. */
final class MeasuredKeys {

  private static final Range TOLERANCE = Range.mm(0, 5);
  private static final Range PANEL_THICKNESS = Range.mm(0.05, 500);
  private static final Range PLACE = Range.mm(-500, 5500);
  private static final Range TAPER = Range.of(0, 0.5, "a share per 100 mm");
  private static final Range BOW = Range.of(0, 0.2, "a share per 100 mm squared");
  private static final String PLACE_WANTED = "x and y on the panel in mm, such as [20, 220]";
  private static final String BOTTOMS_WANTED =
      "ply numbers or names with depths in mm, such as {3: 2.92}";
  private static final String PLACES_WANTED =
      "a list of places, such as {at: [20, 220], bottoms: {3: 2.92}, tolerance: 0.02}";

  private MeasuredKeys() {}

  static Measured read(Keys keys, PlyNames names) {
    YamlNode at = keys.optional("measured_at", PLACE_WANTED);
    return new Measured(
        keys.numberOrNull("measured_thickness", PANEL_THICKNESS),
        keys.number("measured_thickness_tolerance", 0, TOLERANCE),
        new Bottoms(
            bottoms(keys.optional("measured_bottoms", BOTTOMS_WANTED), names),
            keys.number("measured_bottoms_tolerance", 0, TOLERANCE)),
        at == null ? null : point(at),
        places(keys, names),
        Measured.USUAL_CENTRE,
        keys.numberOrNull("press_taper", TAPER),
        keys.number("press_bow", 0, BOW));
  }

  private static PanelPoint point(YamlNode node) {
    List<Double> xy = Keys.numbers(node, 2, PLACE, PLACE_WANTED);
    return new PanelPoint(xy.get(0), xy.get(1));
  }

  private static List<MeasuredPlace> places(Keys keys, PlyNames names) {
    List<MeasuredPlace> out = new ArrayList<>();
    for (YamlNode item : keys.list("measured_places", PLACES_WANTED)) {
      Keys place =
          Keys.of(
              item, "measured_places." + (out.size() + 1), "at", "bottoms", "tolerance", "tile");
      PanelPoint at = point(place.required("at", PLACE_WANTED));
      YamlNode node = place.required("bottoms", BOTTOMS_WANTED);
      SortedMap<Integer, Double> bottoms = bottoms(node, names);
      if (bottoms.isEmpty()) {
        throw new InputFault(node.place(), "no bottom", "wanted " + BOTTOMS_WANTED);
      }
      out.add(
          new MeasuredPlace(
              at,
              new Bottoms(bottoms, place.number("tolerance", 0, TOLERANCE)),
              tile(place),
              node.place()));
    }
    return out;
  }

  private static String tile(Keys place) {
    String tile = place.text("tile", "", "a panel of a tiled job, such as tile-1-1");
    if (!tile.isEmpty() && !tile.matches("tile-\\d{1,3}-\\d{1,3}")) {
      throw new InputFault(
          place.place("tile"), "found \"" + tile + "\"", "wanted a name such as tile-1-1");
    }
    return tile;
  }

  private static SortedMap<Integer, Double> bottoms(YamlNode node, PlyNames names) {
    SortedMap<Integer, Double> out = new TreeMap<>();
    if (node == null) {
      return out;
    }
    for (Map.Entry<String, YamlNode> entry : Keys.freeKeys(node, BOTTOMS_WANTED).entrySet()) {
      int number = names.number(entry.getKey(), node.keyPlace(entry.getKey()));
      if (out.putIfAbsent(number, PANEL_THICKNESS.check(entry.getValue())) != null) {
        throw new InputFault(
            node.keyPlace(entry.getKey()),
            "ply " + number + " a second time",
            "give one depth a ply");
      }
    }
    return out;
  }
}
