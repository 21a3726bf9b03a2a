package plyscape.layup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import plyscape.fault.Place;
import plyscape.layup.statistics.SeededNormals;

/** Stacks of references-2.md, section 8 (all derived there). */
class StackEstimateTest {

  private static final Place HERE = Place.file("test");

  /** Seven layers of 0.6 without glue, total read: the share that the press took is unknown. */
  @Test
  void total_commonShareUnknown() {
    double sigma = 0.05;
    double[] exact = {0.046291, 0.059761, 0.065465, 0.065465, 0.059761, 0.046291, 0};
    double[] coarse = {0.046839, 0.061445, 0.068883, 0.071429, 0.069620, 0.063084, 0.05};
    for (int k = 1; k <= 7; k++) {
      BoundaryForm one = seven(sigma, 4.34, 0).at(LayerStack.bottomOf(k));
      assertEquals(4.34 / 7 * k, one.depthMm(0, 0), 1e-9);
      assertEquals(3 * exact[k - 1], one.toleranceMm(0, 0, Method.RSS), 3e-6);
      BoundaryForm two = seven(sigma, 4.34, 0.05).at(LayerStack.bottomOf(k));
      assertEquals(4.34 / 7 * k, two.depthMm(0, 0), 1e-9);
      assertEquals(3 * coarse[k - 1], two.toleranceMm(0, 0, Method.RSS), 3e-6);
    }
  }

  /** No reading: tolerances add up from the top face. */
  @Test
  void nothingRead_addsUp() {
    LayerStack stack = LayerStack.of(Layups.of(0, 0, 0.15, 0.6, 0.6, 0.6, 0.6));
    StackEstimate estimate = new StackEstimate(stack, new PressShape(0.03, 0), List.of());
    for (int k = 1; k <= 4; k++) {
      BoundaryForm form = estimate.at(LayerStack.bottomOf(k));
      assertEquals(0.15 * Math.sqrt(k), form.toleranceMm(0, 0, Method.RSS), 1e-12);
      assertEquals(0.15 * k, form.toleranceMm(0, 0, Method.WORST), 1e-12);
      double away = 0.6 * k * 0.03 * Math.hypot(1.5, -2);
      assertEquals(
          Math.hypot(0.15 * Math.sqrt(k), away), form.toleranceMm(1.5, -2, Method.RSS), 1e-12);
    }
  }

  /**
   * Exact readings are met exactly, whatever the tolerances, and layers share what lies between.
   */
  @Test
  void exactReadings_areMet() {
    LayerStack stack = LayerStack.of(Layups.of(0.05, 0.01, 0.04, 0.9, 0.6, 0.9, 0.6, 0.9));
    List<StackReading> readings =
        List.of(reading(1, 0, 0, 0.93, 0), reading(5, 0, 0, 2.52, 0), reading(9, 0, 0, 4.2, 0));
    StackEstimate estimate = new StackEstimate(stack, new PressShape(0, 0), readings);
    for (StackReading r : readings) {
      assertEquals(r.depthMm(), estimate.at(r.interfaceIndex()).depthMm(0, 0), 1e-8);
      assertEquals(0, estimate.at(r.interfaceIndex()).toleranceMm(0, 0, Method.RSS), 1e-5);
    }
  }

  /** The order of readings doesn't matter, and one more never makes a boundary less sure. */
  @Test
  void moreReadings_neverHurt() {
    LayerStack stack = LayerStack.of(Layups.of(0.05, 0.01, 0.06, 0.9, 0.6, 0.9, 0.6, 0.9));
    List<StackReading> readings = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      readings.add(reading(1 + 2 * (i % 4), i - 2, 1 - 0.3 * i, 0.95 * (1 + i % 4), 0.03));
    }
    double[] before = null;
    for (int n = 1; n <= readings.size(); n++) {
      StackEstimate estimate =
          new StackEstimate(stack, new PressShape(0.03, 0), readings.subList(0, n));
      List<StackReading> turned = new ArrayList<>(readings.subList(0, n));
      Collections.reverse(turned);
      StackEstimate other = new StackEstimate(stack, new PressShape(0.03, 0), turned);
      double[] now = new double[10];
      for (int k = 1; k < 10; k++) {
        now[k] = estimate.at(k).toleranceMm(0.7, -1.1, Method.RSS);
        assertEquals(estimate.at(k).depthMm(1, 2), other.at(k).depthMm(1, 2), 1e-9);
        assertTrue(before == null || now[k] <= before[k] + 1e-9);
      }
      before = now;
    }
  }

  /**
   * Thin coarse plies and thick fine ones in turn, total exact: +-0.110, where +-0.074 was said.
   */
  @Test
  void unlikePlies_totalRead() {
    List<Ply> plies = new ArrayList<>();
    for (int i = 1; i <= 8; i++) {
      boolean thin = i % 2 == 1;
      plies.add(new Ply(i, "p" + i, 0, thin ? 0.45 : 0.9, thin ? 0.12 : 0.02, 0, ""));
    }
    Layup layup = new Layup("l", "", plies, new GlueLine(0, 0), Measured.NOTHING, 0);
    PressedPanel pressed = PressedPanel.of(layup.withThickness(5.4, 0), false);
    // Errors of the layers above and below, each by its own part of the total's weight.
    double f = 0.45 / 5.4;
    double squares = 0.0144 * ((1 - f) * (1 - f) + 3 * f * f) + 0.0004 * 4 * f * f;
    assertEquals(Math.sqrt(squares), pressed.toleranceMm(1, pressed.centre(), Method.RSS), 1e-6);
    assertEquals(0.112, pressed.toleranceMm(1, pressed.centre(), Method.RSS), 0.002);
  }

  /** A second implementation, least squares over the layers, drawn at random. */
  @Test
  void tolerances_againstDrawnPanels() {
    againstDrawnPanels(0);
  }

  @Test
  void tolerances_againstDrawnPanelsWithABow() {
    againstDrawnPanels(0.02);
  }

  private static void againstDrawnPanels(double bow) {
    Layup layup =
        Layups.of(0.05, 0.02, 0.06, 0.9, 0.5, 0.9, 0.5)
            .withThickness(2.9, 0.05)
            .withBottoms(new TreeMap<>(Map.of(2, 1.42)), 0.03);
    Measured m = layup.measured();
    Measured measured =
        new Measured(
            m.thicknessMm(),
            m.thicknessToleranceMm(),
            m.bottoms(),
            m.at(),
            m.places(),
            m.centre(),
            m.pressTaper(),
            bow);
    layup =
        layup.withMeasured(
            measured.withPlaces(
                List.of(
                    new MeasuredPlace(
                        new PanelPoint(220, 30),
                        new Bottoms(new TreeMap<>(Map.of(1, 0.9, 3, 2.4)), 0.02),
                        "",
                        HERE))));
    PressedPanel pressed = PressedPanel.of(layup, false);
    PanelDraw draw = new PanelDraw(pressed);
    SeededNormals normals = new SeededNormals(17);
    int panels = 20_000;
    double[][] squares = new double[2][8];
    PanelPoint[] at = {new PanelPoint(20, 200), new PanelPoint(200, 40)};
    for (int p = 0; p < panels; p++) {
      draw.next(normals);
      for (int k = 1; k < 8; k++) {
        for (int i = 0; i < 2; i++) {
          double x = (at[i].xMm() - 120) / 100;
          double y = (at[i].yMm() - 120) / 100;
          squares[i][k] += Math.pow(draw.errorMm(k, x, y), 2);
        }
      }
    }
    for (int k = 1; k < 8; k++) {
      for (int i = 0; i < 2; i++) {
        double tolerance = pressed.toleranceMm(k, at[i], Method.RSS);
        assertEquals(
            tolerance,
            3 * Math.sqrt(squares[i][k] / panels),
            tolerance * 3.5 / Math.sqrt(2.0 * panels));
      }
    }
  }

  private static StackEstimate seven(double sigma, double total, double readingSigma) {
    Layup layup = Layups.of(0, 0, 3 * sigma, 0.6, 0.6, 0.6, 0.6, 0.6, 0.6, 0.6);
    return new StackEstimate(
        LayerStack.of(layup),
        new PressShape(0, 0),
        List.of(reading(13, 0, 0, total, 3 * readingSigma)));
  }

  private static StackReading reading(int k, double x, double y, double mm, double tolerance) {
    return new StackReading(k, x, y, mm, tolerance, "a reading", HERE);
  }
}
