package plyscape.layup;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import plyscape.fault.InputFault;
import plyscape.fault.Place;

/**
 * The interfaces of a layup whose depth is known, from the top face (exactly 0) down, and the
 * stretches between them.
 *
 * <p>A bottom ply that is named in {@code measured_bottoms} while {@code measured_thickness} is
 * given too was measured twice: its measured bottom is taken as it is, if the two agree within the
 * sum of their tolerances.
 */
final class MeasuredDepths {

  /** One known interface. */
  record Known(int interfaceIndex, double depthMm, double toleranceMm, String what) {}

  private final List<Known> known;

  private MeasuredDepths(List<Known> known) {
    this.known = List.copyOf(known);
  }

  /**
   * What is known of a layup.
   *
   * @throws InputFault if two measured depths don't increase strictly, or measure the same face and
   *     disagree
   */
  static MeasuredDepths of(Layup layup) {
    int plies = layup.plies().size();
    List<Known> known = new ArrayList<>();
    known.add(new Known(0, 0, 0, "the top face"));
    for (Map.Entry<Integer, Double> entry : layup.measured().bottomsMm().entrySet()) {
      Ply ply = layup.plies().get(entry.getKey() - 1);
      known.add(
          new Known(
              LayerStack.bottomOf(ply.number()),
              entry.getValue(),
              layup.measured().bottomsToleranceMm(),
              "the measured bottom of ply " + ply.number() + " (" + ply.name() + ")"));
    }
    if (layup.measured().thicknessMm() != null) {
      Known face =
          new Known(
              LayerStack.bottomOf(plies),
              layup.measured().thicknessMm(),
              layup.measured().thicknessToleranceMm(),
              "the measured thickness");
      Known last = known.get(known.size() - 1);
      if (last.interfaceIndex() == face.interfaceIndex()) {
        requireAgreement(layup, last, face);
      } else {
        known.add(face);
      }
    }
    for (int i = 1; i < known.size(); i++) {
      requireIncrease(layup, known.get(i - 1), known.get(i));
    }
    return new MeasuredDepths(known);
  }

  /** The known interfaces in order, the top face first. */
  List<Known> known() {
    return known;
  }

  /** The last known one at or above an interface. */
  Known above(int interfaceIndex) {
    Known found = known.get(0);
    for (Known k : known) {
      if (k.interfaceIndex() <= interfaceIndex) {
        found = k;
      }
    }
    return found;
  }

  /** The first known one below an interface, or null when nothing below was measured. */
  Known below(int interfaceIndex) {
    for (Known k : known) {
      if (k.interfaceIndex() > interfaceIndex) {
        return k;
      }
    }
    return null;
  }

  private static void requireIncrease(Layup layup, Known upper, Known lower) {
    if (!(lower.depthMm() > upper.depthMm())) {
      throw new InputFault(
          new Place(layup.file(), 0, 0, "measured_bottoms"),
          lower.what()
              + ", "
              + millimetres(lower.depthMm())
              + " mm, is not below "
              + upper.what()
              + ", "
              + millimetres(upper.depthMm())
              + " mm",
          "measured depths must increase strictly from top to bottom: measure the two again");
    }
  }

  private static void requireAgreement(Layup layup, Known bottom, Known face) {
    double allowed = bottom.toleranceMm() + face.toleranceMm() + 1e-9;
    if (Math.abs(bottom.depthMm() - face.depthMm()) > allowed) {
      throw new InputFault(
          new Place(layup.file(), 0, 0, "measured_bottoms"),
          bottom.what()
              + ", "
              + millimetres(bottom.depthMm())
              + " mm, and "
              + face.what()
              + ", "
              + millimetres(face.depthMm())
              + " mm, are the same face but differ by more than their tolerances",
          "leave one of them out, or measure again");
    }
  }

  private static String millimetres(double depthMm) {
    return String.format(Locale.ROOT, "%.3f", depthMm);
  }
}
