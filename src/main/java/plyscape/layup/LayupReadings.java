package plyscape.layup;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.text.Template;

/** All that was measured on a panel as one list of readings, checked one by one. */
public final class LayupReadings {

  /** Places are counted in this many mm from the panel's centre. */
  static final double UNIT_MM = 100;

  /**
   * Least and greatest measured over nominal depth that is believed: beyond, a ply was miscounted
   * or mismeasured.
   */
  private static final double LEAST_FACTOR = 0.85;

  private static final double GREATEST_FACTOR = 1.10;

  /** What to do about a depth that isn't believed. */
  static final String BELIEVED =
      "0.85 to 1.10 times is believed: mend the plies or the measurement, or give"
          + " --accept-thickness";

  private LayupReadings() {}

  /** All that was measured, top to bottom at each place. */
  public static List<StackReading> of(Layup layup) {
    Measured measured = layup.measured();
    PanelPoint centre = measured.centre();
    List<StackReading> all = new ArrayList<>();
    PanelPoint at = measured.at() == null ? centre : measured.at();
    Place where = new Place(layup.file(), 0, 0, "measured_bottoms");
    add(all, layup, new MeasuredBottoms(measured.bottoms(), at, where, ""), centre);
    if (measured.thicknessMm() != null) {
      all.add(
          new StackReading(
              stackLayers(layup),
              x(at, centre),
              y(at, centre),
              measured.thicknessMm(),
              measured.thicknessToleranceMm(),
              "the measured thickness",
              new Place(layup.file(), 0, 0, "measured_thickness")));
    }
    for (MeasuredPlace place : measured.places()) {
      String there = " at " + place.at();
      add(
          all,
          layup,
          new MeasuredBottoms(place.bottoms(), place.at(), place.where(), there),
          centre);
    }
    return all;
  }

  private record MeasuredBottoms(Bottoms bottoms, PanelPoint at, Place where, String there) {}

  private static void add(
      List<StackReading> all, Layup layup, MeasuredBottoms read, PanelPoint centre) {
    for (Map.Entry<Integer, Double> entry : read.bottoms().depthsMm().entrySet()) {
      Ply ply = layup.ply(entry.getKey());
      all.add(
          new StackReading(
              LayerStack.bottomOf(ply.number()),
              x(read.at(), centre),
              y(read.at(), centre),
              entry.getValue(),
              read.bottoms().toleranceMm(),
              Template.fill(
                  "the measured bottom of ply %d (%s)%s", ply.number(), ply.name(), read.there()),
              read.where()));
    }
  }

  private static int stackLayers(Layup layup) {
    return LayerStack.bottomOf(layup.plies().size());
  }

  /** The place in units of the model. */
  public static double x(PanelPoint at, PanelPoint centre) {
    return (at.xMm() - centre.xMm()) / UNIT_MM;
  }

  /** The place in units of the model. */
  public static double y(PanelPoint at, PanelPoint centre) {
    return (at.yMm() - centre.yMm()) / UNIT_MM;
  }

  /**
   * Readings at one place must increase with depth, whatever their tolerances.
   *
   * @throws InputFault that names the two
   */
  static void requireOrder(List<StackReading> readings) {
    for (int i = 1; i < readings.size(); i++) {
      StackReading upper = readings.get(i - 1);
      StackReading lower = readings.get(i);
      boolean samePlace = upper.x() == lower.x() && upper.y() == lower.y();
      if (samePlace
          && lower.interfaceIndex() > upper.interfaceIndex()
          && !(lower.depthMm() > upper.depthMm())) {
        throw new InputFault(
            lower.where(),
            Template.fill(
                "%s, %.3f mm, is not below %s, %.3f mm",
                lower.what(), lower.depthMm(), upper.what(), upper.depthMm()),
            "measured depths must increase strictly from top to bottom: measure the two again");
      }
    }
  }

  /**
   * A reading must be near what the plies above it add up to.
   *
   * @throws InputFault if it is outside 0.85..1.10 of it
   */
  static void requireBelievable(Layup layup, StackReading reading) {
    double nominal = LayerStack.of(layup).totalMm(0, reading.interfaceIndex());
    if (!believable(reading.depthMm() / nominal)) {
      double panel = DepthModel.nominalThicknessMm(layup);
      boolean bottom = reading.interfaceIndex() == stackLayers(layup);
      throw new InputFault(
          reading.where(),
          Template.fill(
              "%s is %.3f mm, but plies and glue lines add up to %.3f mm%s: %.3f times",
              reading.what(),
              reading.depthMm(),
              nominal,
              bottom ? "" : Template.fill(" there and to %.3f mm for the whole panel", panel),
              reading.depthMm() / nominal),
          BELIEVED);
    }
  }

  /** Whether a measured over a nominal depth is believed. */
  static boolean believable(double factor) {
    return factor >= LEAST_FACTOR - 1e-12 && factor <= GREATEST_FACTOR + 1e-12;
  }
}
