package plyscape.bend;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.grid.Box;
import plyscape.text.Numbers;
import plyscape.text.Template;

/**
 * Checks probed heights against the panel that they should be of, and averages those of one place.
 */
public final class TopCheck {

  /** Readings nearer than this to each other are of one place, mm. */
  private static final double SAME_PLACE_MM = 0.01;

  /** Readings of one place that differ by more contradict each other, mm. */
  private static final double SAME_HEIGHT_MM = 0.1;

  /** A panel that is bent more than this isn't clamped, or the readings aren't mm. */
  private static final double MOST_SPAN_MM = 3;

  /** A panel may be probed in the waste around it. */
  private static final double WASTE_MM = 50;

  /** Triangles are looked through one by one where the proof asks for heights. */
  private static final int MOST_SCATTERED = 1000;

  private final String file;
  private final double widthMm;
  private final double heightMm;

  private TopCheck(String file, double widthMm, double heightMm) {
    this.file = file;
    this.widthMm = widthMm;
    this.heightMm = heightMm;
  }

  /**
   * The readings of different places.
   *
   * @param file of the readings, for messages
   * @param panel from (0, 0)
   * @param faceMm height of the top face of a flat panel in the work coordinates of the readings
   * @param acceptBend believe a bend of any size
   * @throws InputFault that names the lines, if readings lie outside the panel, contradict each
   *     other, lie in line, or span more than 3 mm
   */
  public static List<TopReading> check(
      String file, List<TopReading> readings, Box panel, double faceMm, boolean acceptBend) {
    TopCheck check = new TopCheck(file, panel.width(), panel.height());
    check.requireOnPanel(readings);
    check.requireSize(readings);
    List<TopReading> places = check.averaged(readings);
    if (TopMap.inLine(places)) {
      throw check.fault(
          places.size()
              + (places.size() == 1 ? " place" : " places")
              + (places.size() < 3 ? "" : ", all in a line"),
          "wanted heights at three places or more that aren't in line; `plyscape probe` makes a"
              + " sheet for them");
    }
    if (places.size() > MOST_SCATTERED && GridTop.of(places) == null) {
      throw check.fault(
          places.size() + " places that aren't all the nodes of a rectangular grid",
          "wanted up to " + MOST_SCATTERED + " of those: thin them out, or probe on a grid");
    }
    if (!acceptBend) {
      check.requireSpan(places, faceMm);
    }
    return places;
  }

  private void requireOnPanel(List<TopReading> readings) {
    for (TopReading r : readings) {
      if (!on(r.x(), r.y())) {
        boolean swapped = readings.stream().allMatch(s -> on(s.y(), s.x()));
        throw new InputFault(
            Place.at(file, r.line(), 1),
            Template.fill(
                "a place (%s, %s) outside the panel of %s", mm(r.x()), mm(r.y()), panel()),
            swapped
                ? "are x and y swapped?"
                : "x and y are mm from the panel's lower left corner, whatever corner the programs"
                    + " start from");
      }
    }
  }

  private boolean on(double x, double y) {
    return x >= -WASTE_MM && y >= -WASTE_MM && x <= widthMm + WASTE_MM && y <= heightMm + WASTE_MM;
  }

  /** Readings in inches or metres all crowd in a corner. */
  private void requireSize(List<TopReading> readings) {
    double right = readings.stream().mapToDouble(TopReading::x).max().orElseThrow();
    double top = readings.stream().mapToDouble(TopReading::y).max().orElseThrow();
    double share = Math.max(right / widthMm, top / heightMm);
    double left = readings.stream().mapToDouble(TopReading::x).min().orElseThrow();
    double bottom = readings.stream().mapToDouble(TopReading::y).min().orElseThrow();
    double from = Math.min(left / widthMm, bottom / heightMm);
    if (share <= 1.1 / 25.4 && from >= -0.1 / 25.4) {
      boolean metres = share <= 1.1 / 1000;
      throw fault(
          Template.fill(
              "all places lie within (%s, %s), a corner of the panel of %s",
              mm(right), mm(top), panel()),
          "are they in " + (metres ? "metres" : "inches") + "? wanted mm");
    }
  }

  private List<TopReading> averaged(List<TopReading> readings) {
    Map<Long, List<Integer>> buckets = new HashMap<>();
    for (int i = 0; i < readings.size(); i++) {
      TopReading r = readings.get(i);
      buckets.computeIfAbsent(bucket(r.x(), r.y(), 0, 0), key -> new ArrayList<>()).add(i);
    }
    List<TopReading> places = new ArrayList<>();
    boolean[] taken = new boolean[readings.size()];
    for (int i = 0; i < taken.length; i++) {
      if (!taken[i]) {
        places.add(place(readings, near(readings, i, buckets, taken)));
      }
    }
    return places;
  }

  /** Readings of the place of a first one, those not taken yet, in their order; takes them. */
  private static List<Integer> near(
      List<TopReading> readings, int first, Map<Long, List<Integer>> buckets, boolean[] taken) {
    TopReading at = readings.get(first);
    SortedSet<Integer> same = new TreeSet<>();
    for (int k = 0; k < 9; k++) {
      for (int i : buckets.getOrDefault(bucket(at.x(), at.y(), k % 3 - 1, k / 3 - 1), List.of())) {
        TopReading r = readings.get(i);
        if (!taken[i] && Math.hypot(r.x() - at.x(), r.y() - at.y()) <= SAME_PLACE_MM) {
          same.add(i);
        }
      }
    }
    same.forEach(i -> taken[i] = true);
    return List.copyOf(same);
  }

  /** Number of a square as wide as places are alike, or of one beside it. */
  private static long bucket(double x, double y, int right, int up) {
    long column = (long) Math.floor(x / SAME_PLACE_MM) + right;
    long row = (long) Math.floor(y / SAME_PLACE_MM) + up;
    return column * 0x1_0000_0000L + row;
  }

  private TopReading place(List<TopReading> readings, List<Integer> same) {
    TopReading first = readings.get(same.get(0));
    List<TopReading> all = same.stream().map(readings::get).toList();
    for (TopReading r : all) {
      if (Math.abs(r.z() - first.z()) > SAME_HEIGHT_MM + 1e-9) {
        throw new InputFault(
            Place.at(file, r.line(), 1),
            Template.fill(
                "%s mm at (%s, %s), but %s mm there in line %d",
                mm(r.z()), mm(r.x()), mm(r.y()), mm(first.z()), first.line()),
            "readings of one place differ by 0.1 mm at most: probe it again");
      }
    }
    return new TopReading(
        mean(all.stream().mapToDouble(TopReading::x).toArray()),
        mean(all.stream().mapToDouble(TopReading::y).toArray()),
        mean(all.stream().mapToDouble(TopReading::z).toArray()),
        first.line());
  }

  private static double mean(double[] values) {
    double sum = 0;
    for (double v : values) {
      sum += v;
    }
    return values.length == 1 ? values[0] : sum / values.length;
  }

  private void requireSpan(List<TopReading> places, double faceMm) {
    TopReading low = places.get(0);
    TopReading high = low;
    for (TopReading r : places) {
      low = r.z() < low.z() ? r : low;
      high = r.z() > high.z() ? r : high;
    }
    if (high.z() - low.z() > MOST_SPAN_MM) {
      throw fault(
          Template.fill(
              "heights from %s mm (line %d) to %s mm (line %d)",
              mm(low.z()), low.line(), mm(high.z()), high.line()),
          "a panel bent by more than 3 mm wants clamping; are they mm? --accept-bend takes it as it"
              + " is");
    }
    double off = Math.max(Math.abs(low.z() - faceMm), Math.abs(high.z() - faceMm));
    if (off > 2 * MOST_SPAN_MM) {
      throw fault(
          Template.fill(
              "heights up to %s mm away from the top face's, %s mm in the programs",
              mm(off), mm(faceMm)),
          "wanted them in the work coordinates of the programs, Z0 where machine.zero_z says;"
              + " --accept-bend takes them as they are");
    }
  }

  private InputFault fault(String found, String help) {
    return new InputFault(Place.file(file), found, help);
  }

  private String panel() {
    return mm(widthMm) + " x " + mm(heightMm) + " mm";
  }

  private static String mm(double value) {
    return Numbers.trimmed(value, 3);
  }
}
