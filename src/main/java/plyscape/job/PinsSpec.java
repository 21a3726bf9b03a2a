package plyscape.job;

import java.util.ArrayList;
import java.util.List;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.job.yaml.Keys;
import plyscape.job.yaml.Keys.Range;
import plyscape.job.yaml.YamlNode;

/**
 * Holes for pins, bored before everything else. Immutable.
 *
 * @param diameterMm of each
 * @param depthMm below the top face
 * @param at places x, y, mm from the panel's lower left; never changed
 * @param place where the job says so
 */
public record PinsSpec(double diameterMm, double depthMm, List<double[]> at, Place place) {

  private static final int MOST = 200;
  private static final String WANTED = "places on the panel in mm, such as [[5, 5], [235, 5]]";

  /** Checks sizes. */
  public PinsSpec {
    if (!(diameterMm > 0) || !(depthMm > 0)) {
      throw new IllegalArgumentException("no pins: " + diameterMm + " mm, " + depthMm + " mm");
    }
    at = List.copyOf(at);
  }

  /** Reads the key {@code pins} of a job; null when it isn't there. */
  static PinsSpec read(Keys job, Job.PanelSpec panel) {
    if (!job.has("pins")) {
      return null;
    }
    Keys keys = job.child("pins", "diameter", "depth", "at");
    double diameter = keys.number("diameter", Range.mm(0.5, 100));
    YamlNode list = keys.required("at", WANTED);
    List<YamlNode> items = Keys.listOf(list, WANTED);
    if (items.isEmpty() || items.size() > MOST) {
      throw new InputFault(
          list.place(), "found " + items.size() + " pins", "wanted 1 to " + MOST + " " + WANTED);
    }
    List<double[]> at = new ArrayList<>();
    for (YamlNode item : items) {
      List<Double> xy = Keys.numbers(item, 2, Range.mm(0, 10_000), WANTED);
      double room =
          Math.min(
              Math.min(xy.get(0), panel.widthMm() - xy.get(0)),
              Math.min(xy.get(1), panel.heightMm() - xy.get(1)));
      if (room < diameter / 2) {
        throw new InputFault(
            item.place(),
            "a pin's hole that isn't whole on the panel",
            "wanted places at least " + diameter / 2 + " mm inside the panel");
      }
      at.add(new double[] {xy.get(0), xy.get(1)});
    }
    return new PinsSpec(diameter, keys.number("depth", Range.mm(0.1, 200)), at, job.place("pins"));
  }
}
