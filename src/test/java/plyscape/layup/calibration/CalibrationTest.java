package plyscape.layup.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import plyscape.fault.InputFault;
import plyscape.layup.LayerStack;
import plyscape.layup.Layup;
import plyscape.layup.Layups;
import plyscape.layup.MadePanel;
import plyscape.layup.Method;
import plyscape.layup.PanelPoint;
import plyscape.layup.PressedPanel;
import plyscape.layup.statistics.SeededNormals;

class CalibrationTest {

  private static final int PANELS = 2000;
  private static final CalibrationRules PLAIN = new CalibrationRules(0.1, false, 0);

  /** Off the panel's edge or under a glass, nobody says where. */
  private static Reading read(int row, int ply, boolean top, double depthMm, double toleranceMm) {
    return new Reading(row, ply, top, depthMm, toleranceMm, null, false);
  }

  @Test
  void oneEdge_statedTolerances_weightedMean() {
    Layup layup = Layups.of(0, 0, 0.1, 1, 1, 1);
    // Weights 1/0.03^2 and 1/0.06^2: four to one.
    List<Reading> readings = List.of(read(2, 1, false, 1.00, 0.03), read(3, 1, false, 1.05, 0.06));
    Calibration found = Calibration.of(layup, readings, PLAIN);
    Calibration.Boundary b = found.boundaries().get(0);
    assertEquals(1.01, b.depthMm(), 1e-9);
    double tolerance = 1 / Math.sqrt(1 / 0.0009 + 1 / 0.0036);
    assertEquals(tolerance, b.toleranceMm(), 1e-4);
    assertEquals(1.959964 / 3 * b.toleranceMm(), b.halfWidth95Mm(), 1e-6);
    assertEquals(tolerance, found.layup().measured().bottomsToleranceMm(), 1e-4);
  }

  @Test
  void topReading_tellsTheBottomAboveThroughTheGlueLine() {
    Layup layup = Layups.of(0.05, 0.04, 0.1, 1, 1, 1);
    Calibration c = Calibration.of(layup, List.of(read(2, 2, true, 1.10, 0.03)), PLAIN);
    assertEquals(1, c.boundaries().get(0).plyNumber());
    assertEquals(1.05, c.boundaries().get(0).depthMm(), 1e-9);
    assertEquals(0.05, c.boundaries().get(0).toleranceMm(), 1e-6);
  }

  @Test
  void oldBottomsStay_unlessReadAgain() {
    Layup layup =
        Layups.of(0, 0, 0.1, 1, 1, 1)
            .withBottoms(new TreeMap<>(Map.of(1, 0.97, 2, 1.8)), 0.02)
            .withThickness(3.0, 0.02);
    Calibration c = Calibration.of(layup, List.of(read(2, 2, false, 2.0, 0.03)), PLAIN);
    assertEquals(Map.of(1, 0.97, 2, 2.0), c.layup().measured().bottomsMm());
    assertEquals(0.03, c.layup().measured().bottomsToleranceMm(), 1e-9);
  }

  @Test
  void bottomsFarFromNominal_areRefused_withThePanelsThickness() {
    Layup layup = Layups.of(0.04, 0.01, 0.05, 0.9, 0.9, 0.9);
    List<Reading> readings = List.of(read(2, 1, false, 14, 0.1), read(3, 2, false, 28, 0.1));
    String message =
        assertThrows(InputFault.class, () -> Calibration.of(layup, readings, PLAIN)).getMessage();
    assertTrue(message.contains("2.780 mm for the whole panel"), message);
  }

  @Test
  void outlier_namedAndSetAside() {
    Layup layup = Layups.of(0.04, 0.01, 0.05, 0.9, 0.9, 0.9, 0.9);
    SeededNormals normals = new SeededNormals(3);
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      int ply = 1 + i % 3;
      readings.add(read(2 + i, ply, false, 0.94 * ply - 0.04 + 0.02 * normals.next(), 0));
    }
    readings.add(read(20, 2, false, 2.2, 0));
    Calibration c = Calibration.of(layup, readings, PLAIN);
    assertEquals(List.of(20), c.outliers().stream().map(o -> o.reading().row()).toList());
    assertEquals(0.36, c.outliers().get(0).offMm(), 0.05);
    assertEquals(1.84, c.layup().measured().bottomsMm().get(2), 0.04);
  }

  /** A single reading of its edge is held against the other plies. */
  @Test
  void outlierWithoutAnyRepeat_isFoundByTheOtherPlies() {
    Layup layup = Layups.of(0.04, 0.01, 0.04, 0.9, 0.9, 0.9, 0.9, 0.9);
    List<Reading> readings = new ArrayList<>();
    for (int ply = 1; ply <= 4; ply++) {
      double slip = ply == 2 ? 0.3 : 0;
      readings.add(read(1 + ply, ply, false, 0.94 * ply - 0.04 + slip, 0.05));
    }
    Calibration c = Calibration.of(layup, readings, PLAIN);
    assertEquals(List.of(3), c.outliers().stream().map(o -> o.reading().row()).toList());
    assertEquals(3, c.boundaries().size());
  }

  @Test
  void scatterBeyondTheStated_widensTheInterval() {
    Layup layup = Layups.of(0, 0, 0.05, 1, 1, 1);
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      readings.add(read(2 + i, 1, false, 1 + (i % 2 == 0 ? 0.05 : -0.05), 0.06));
    }
    Calibration.Noise noise = Calibration.of(layup, readings, PLAIN).noise();
    assertEquals(0.05 * Math.sqrt(8.0 / 7) / 0.02, noise.factor(), 1e-9);
    assertEquals(7, noise.degrees());
  }

  /**
   * 95 % intervals over 2000 made panels, one boundary a panel: noise stated; noise told from
   * scatter; a coupon whose zero is off; wood that lay hollow under it; one gross misreading among
   * the others; a panel pressed as a wedge, judged in another corner. Limits of three standard
   * errors and a half.
   */
  @Test
  void coverage_everySituation() {
    for (Situation s : Situation.values()) {
      double held = coverage(s, 40 + s.ordinal());
      assertTrue(held >= 0.93 && held <= 0.97, s + " holds " + held);
    }
  }

  private enum Situation {
    STATED,
    SCATTER,
    ZERO_OFF,
    HOLLOW,
    MISREAD,
    WEDGE
  }

  private static double coverage(Situation s, long seed) {
    SeededNormals normals = new SeededNormals(seed);
    int held = 0;
    int refused = 0;
    for (int p = 0; p < PANELS; p++) {
      Layup layup = Layups.of(0.05, 0.01, 0.05, 0.9, 0.6, 0.9, 0.6, 0.9);
      MadePanel panel = new MadePanel(layup, s == Situation.WEDGE ? 0.03 : 0, 0, normals);
      List<Reading> readings = readings(s, panel, normals);
      CalibrationRules rules =
          new CalibrationRules(
              0.1, false, s == Situation.ZERO_OFF ? 0.03 : s == Situation.HOLLOW ? 0.04 : 0);
      Calibration found;
      try {
        found = Calibration.of(layup, readings, rules);
      } catch (InputFault e) {
        refused++; // it says that it can't know
        continue;
      }
      if (s == Situation.WEDGE) {
        PanelPoint far = new PanelPoint(220, 200);
        PressedPanel pressed = PressedPanel.of(found.layup(), true);
        double off = panel.depthMm(5, 220, 200) - pressed.depthMm(5, far);
        double wide = pressed.toleranceMm(5, far, Method.RSS) * 1.959964 / 3;
        held += Math.abs(off) <= wide ? 1 : 0;
        continue;
      }
      int chosen = (int) (found.boundaries().size() * normals.uniform());
      Calibration.Boundary b = found.boundaries().get(chosen);
      double truth = panel.depthMm(LayerStack.bottomOf(b.plyNumber()), 120, 120);
      held += Math.abs(b.depthMm() - truth) <= b.halfWidth95Mm() ? 1 : 0;
    }
    assertTrue(refused <= PANELS / 100, s + " refuses " + refused);
    return (double) held / (PANELS - refused);
  }

  private static List<Reading> readings(Situation s, MadePanel panel, SeededNormals normals) {
    List<Reading> out = new ArrayList<>();
    double tolerance = 0.03 + 0.03 * normals.uniform();
    boolean stated = s != Situation.SCATTER;
    double zero = s == Situation.ZERO_OFF ? 0.01 * normals.next() : 0;
    double tilt = s == Situation.HOLLOW ? 0.04 / 3 * normals.next() : 0;
    double hollow = s == Situation.HOLLOW ? 0.04 / 3 * normals.next() : 0;
    int wrong = s == Situation.MISREAD ? 1 + (int) (4 * normals.uniform()) : 0;
    PanelPoint at = s == Situation.WEDGE ? new PanelPoint(20, 30) : null;
    double x = at == null ? 120 : 20;
    double y = at == null ? 120 : 30;
    for (int ply = 1; ply <= 4; ply++) {
      int repeats = s == Situation.SCATTER ? 3 : 1;
      for (int i = 0; i < repeats; i++) {
        // Pads lie in a row: the wood under them is tilted and hollow by the same tolerance.
        double u = (ply - 2.5) / 1.5;
        double under = 0.8 * (tilt * u + hollow);
        double slip = ply == wrong ? (normals.uniform() < 0.5 ? -1 : 1) * 0.4 : 0;
        double depth = panel.read(LayerStack.bottomOf(ply), x, y, tolerance) + zero + under + slip;
        out.add(
            new Reading(out.size() + 2, ply, false, depth, stated ? tolerance : 0, at, at == null));
      }
    }
    return out;
  }
}
