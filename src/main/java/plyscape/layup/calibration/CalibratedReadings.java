package plyscape.layup.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.Objects;
import java.util.TreeMap;
import plyscape.fault.Place;
import plyscape.layup.Bottoms;
import plyscape.layup.BoundaryForm;
import plyscape.layup.LayerStack;
import plyscape.layup.Layup;
import plyscape.layup.LayupReadings;
import plyscape.layup.Measured;
import plyscape.layup.MeasuredPlace;
import plyscape.layup.Method;
import plyscape.layup.PanelPoint;
import plyscape.layup.PressShape;
import plyscape.layup.StackEstimate;
import plyscape.layup.StackReading;
import plyscape.layup.statistics.BestEstimate;

/**
 * A layup with read bottoms as its measured ones. Readings off one test cut share an error, and the
 * estimate takes readings as independent: their tolerances are widened until, over the boundaries
 * that were read, the squares of what the estimate claims are those of what it is truly off by.
 * Bottoms that the layup had measured elsewhere stay. Immutable.
 */
final class CalibratedReadings {

  /** Tolerances are written to this, rounded up. */
  private static final double WRITTEN_MM = 1e-4;

  private static final double MOST_WIDER = 64;

  /** Bottoms read again this near to an old place take its place, mm. */
  private static final double SAME_PLACE_MM = 1;

  private final Layup before;
  private final List<ReadBottom> bottoms;
  private final double sharedMm;
  private final double wider;
  private final StackEstimate estimate;

  CalibratedReadings(Layup before, List<ReadBottom> bottoms, CalibrationRules rules) {
    this.before = before;
    this.bottoms = List.copyOf(bottoms);
    this.sharedMm = rules.cutToleranceMm();
    this.wider = wider();
    this.estimate = estimate(wider);
  }

  /** The read bottoms, place by place, top to bottom. */
  List<ReadBottom> bottoms() {
    return bottoms;
  }

  /** How far one of them is from what all others say. */
  BestEstimate.LeftOut leftOut(int bottom) {
    return estimate.leftOut(bottom);
  }

  /** The layup with them. */
  Layup layup() {
    Measured measured = before.measured();
    NavigableMap<Integer, Double> here = new TreeMap<>();
    double squares = 0;
    List<MeasuredPlace> places = new ArrayList<>();
    for (ReadBottom b : bottoms) {
      if (b.at() == null) {
        here.put(b.plyNumber(), rounded(b.depthMm()));
        squares += tolerance(b) * tolerance(b);
      } else {
        add(places, b);
      }
    }
    for (MeasuredPlace old : measured.places()) {
      if (bottoms.stream().noneMatch(b -> b.at() != null && near(b.at(), old.at()))) {
        places.add(old);
      }
    }
    Bottoms own = measured.bottoms();
    if (!here.isEmpty()) {
      double tolerance = up(Math.sqrt(squares / here.size()));
      measured.bottomsMm().forEach(here::putIfAbsent);
      own =
          new Bottoms(
              here,
              here.size() > bottoms.size()
                  ? Math.max(tolerance, measured.bottomsToleranceMm())
                  : tolerance);
    }
    return before.withMeasured(measured.withBottoms(own).withPlaces(places));
  }

  /** Bottoms of one place and tolerance go together. */
  private void add(List<MeasuredPlace> places, ReadBottom b) {
    double tolerance = up(tolerance(b));
    NavigableMap<Integer, Double> depths = new TreeMap<>();
    MeasuredPlace same =
        places.stream()
            .filter(p -> p.at().equals(b.at()) && p.bottoms().toleranceMm() == tolerance)
            .findFirst()
            .orElse(null);
    if (same != null) {
      depths.putAll(same.bottoms().depthsMm());
      places.remove(same);
    }
    depths.put(b.plyNumber(), rounded(b.depthMm()));
    places.add(
        new MeasuredPlace(
            b.at(),
            new Bottoms(depths, tolerance),
            "",
            new Place(before.file(), 0, 0, "measured_places")));
  }

  private static boolean near(PanelPoint a, PanelPoint b) {
    return Math.hypot(a.xMm() - b.xMm(), a.yMm() - b.yMm()) <= SAME_PLACE_MM;
  }

  private double tolerance(ReadBottom b) {
    return tolerance(b, wider);
  }

  private double tolerance(ReadBottom b, double times) {
    return b.cut()
        ? Math.sqrt(b.toleranceMm() * b.toleranceMm() + times * sharedMm * sharedMm)
        : b.toleranceMm();
  }

  /** How many times the shared error's square is added to each reading's. */
  private double wider() {
    if (sharedMm == 0 || bottoms.stream().noneMatch(ReadBottom::cut) || ratio(1) <= 1) {
      return 1;
    }
    double low = 1;
    double high = MOST_WIDER;
    for (int i = 0; i < 12; i++) {
      double mid = Math.sqrt(low * high);
      if (ratio(mid) > 1) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return high;
  }

  /** Mean square of the true over the claimed tolerance of the boundaries that were read. */
  private double ratio(double times) {
    StackEstimate trial = estimate(times);
    double sum = 0;
    for (int i = 0; i < bottoms.size(); i++) {
      StackReading r = trial.readings().get(i);
      BoundaryForm form = trial.at(r.interfaceIndex());
      double claimed = form.toleranceMm(r.x(), r.y(), Method.RSS);
      sum += square(form, trial, r) / (claimed * claimed);
    }
    return sum / bottoms.size();
  }

  /** Square of the plus or minus of a boundary when cut readings of a place share their error. */
  private double square(BoundaryForm form, StackEstimate trial, StackReading at) {
    double claimed = form.toleranceMm(at.x(), at.y(), Method.RSS);
    double sum = claimed * claimed;
    for (int i = 0; i < bottoms.size(); i++) {
      double c = form.coefficient(trial.readingSource(i), at.x(), at.y());
      double taken = trial.readings().get(i).toleranceMm();
      double own = bottoms.get(i).toleranceMm();
      sum += c * c * (own * own - taken * taken);
      for (int j = 0; j < bottoms.size() && bottoms.get(i).cut(); j++) {
        boolean same =
            bottoms.get(j).cut() && Objects.equals(bottoms.get(i).at(), bottoms.get(j).at());
        sum +=
            same
                ? c * form.coefficient(trial.readingSource(j), at.x(), at.y()) * sharedMm * sharedMm
                : 0;
      }
    }
    return sum;
  }

  /** The estimate from these readings first, and then from what else the layup has measured. */
  private StackEstimate estimate(double times) {
    List<StackReading> readings = new ArrayList<>();
    PanelPoint centre = before.measured().centre();
    PanelPoint here = before.measured().at() == null ? centre : before.measured().at();
    boolean placed = false;
    for (ReadBottom b : bottoms) {
      PanelPoint at = b.at() == null ? here : b.at();
      placed |= b.at() != null;
      readings.add(
          new StackReading(
              LayerStack.bottomOf(b.plyNumber()),
              LayupReadings.x(at, centre),
              LayupReadings.y(at, centre),
              b.depthMm(),
              tolerance(b, times),
              "",
              Place.file(before.file())));
    }
    readings.addAll(
        LayupReadings.of(before.withMeasured(before.measured().withBottoms(Bottoms.NONE))));
    PressShape press = before.measured().press();
    boolean usual = placed && before.measured().pressTaper() == null;
    double taper = usual ? Measured.USUAL_TAPER : press.taperTolerance();
    return new StackEstimate(
        LayerStack.of(before), new PressShape(taper, press.bowTolerance()), readings);
  }

  private static double rounded(double mm) {
    return Math.rint(mm / WRITTEN_MM) * WRITTEN_MM;
  }

  private static double up(double mm) {
    return Math.ceil(mm / WRITTEN_MM - 1e-6) * WRITTEN_MM;
  }
}
