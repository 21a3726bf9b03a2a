package plyscape.layup;

import java.util.List;
import plyscape.layup.statistics.ColourRisk;
import plyscape.layup.statistics.SeededNormals;

/**
 * How likely one panel shows the wrong ply on more than a hundredth of its carved area. Errors are
 * shared over a panel, so that a small expected area may come from few panels that are all wrong.
 *
 * <p>By sampling: each panel draws its layers, press, taper and readings ({@link PanelDraw}), one
 * error of the machine's Z, one of the sanding, and its flatness as tilt and bow; faces that
 * sanding may not reach are wrong if they are wrong as cut or as sanded. Seeded: the same plan
 * gives the same figure.
 */
public final class PanelRisk {

  /** Share of the area that may be wrong. */
  static final double AREA_SHARE = 0.01;

  private static final int PANELS = 4000;
  private static final long SEED = 20_231;

  /** Places beyond this add nothing to a share of a hundredth. */
  private static final int MOST_SPOTS = 2000;

  /** A bow in x and y squared, less its mean, with the deviation of a tilt over a square. */
  private static final double BOW = Math.sqrt(15.0 / 8);

  private final DepthModel model;
  private final CutAllowance allowance;
  private final double flatnessMm;
  private final PanelPoint centre;
  private final double reachMm;
  private final double[] x;
  private final double[] y;
  private final int[] ply;
  private final boolean[] sanded;
  private final double[] cut;
  private final double[] top;
  private final double[] bottom;

  private PanelRisk(DepthModel model, List<Spot> spots) {
    this.model = model;
    allowance = model.allowance();
    flatnessMm = model.flatnessMm();
    centre = model.centre();
    int step = 1 + spots.size() / MOST_SPOTS;
    int n = (spots.size() + step - 1) / step;
    x = new double[n];
    y = new double[n];
    ply = new int[n];
    sanded = new boolean[n];
    cut = new double[n];
    top = new double[n];
    bottom = new double[n];
    double reach = 1;
    for (int i = 0; i < n; i++) {
      Spot spot = spots.get(i * step);
      fill(i, spot);
      reach = Math.max(reach, Math.abs(spot.at().xMm() - centre.xMm()));
      reach = Math.max(reach, Math.abs(spot.at().yMm() - centre.yMm()));
    }
    reachMm = reach;
  }

  private void fill(int i, Spot spot) {
    PlyDepth at = model.depth(model.ply(spot.ply()), spot.at());
    x[i] = spot.at().xMm() - centre.xMm();
    y[i] = spot.at().yMm() - centre.yMm();
    ply[i] = spot.ply();
    sanded[i] = spot.sanded();
    cut[i] = Double.isNaN(spot.cutMm()) ? at.targetMm() : spot.cutMm();
    top[i] = at.topMm();
    bottom[i] = at.bottomMm();
  }

  /** The share of panels, over places of equal area. */
  static double of(DepthModel model, List<Spot> spots) {
    return spots.isEmpty() ? 0 : new PanelRisk(model, spots).share();
  }

  private double share() {
    PanelDraw draw = model.draw();
    boolean bows = model.bows();
    SeededNormals normals = new SeededNormals(SEED);
    int wrongPanels = 0;
    int faces = 2 * model.plies();
    double[][] error = new double[faces][];
    for (int p = 0; p < PANELS; p++) {
      draw.next(normals);
      for (int k = 0; k < faces; k++) {
        double here = draw.errorMm(k, 0, 0);
        double alongX = draw.errorMm(k, 1, 0) - here;
        double alongY = draw.errorMm(k, 0, 1) - here;
        // Zero but for rounding where the press leaves no bow.
        double bow = bows ? (alongX + draw.errorMm(k, -1, 0) - here) / 2 : 0;
        error[k] = new double[] {here, alongX - bow, alongY - bow, bow};
      }
      int wrong = wrong(error, normals);
      wrongPanels += wrong > AREA_SHARE * x.length ? 1 : 0;
    }
    return (double) wrongPanels / PANELS;
  }

  private int wrong(double[][] error, SeededNormals normals) {
    double z = normals.next() * allowance.zErrorMm() / ColourRisk.SIGMAS;
    double sandedBy =
        allowance.sandingMm() + normals.next() * allowance.sandingToleranceMm() / ColourRisk.SIGMAS;
    double flat = flatnessMm / ColourRisk.SIGMAS;
    double tiltX = normals.next() * flat;
    double tiltY = normals.next() * flat;
    double bow = normals.next() * flat * BOW;
    int wrong = 0;
    for (int i = 0; i < x.length; i++) {
      if (model.left(ply[i])) {
        continue;
      }
      double u = x[i] / reachMm;
      double v = y[i] / reachMm;
      double asCut = cut[i] + z + tiltX * u + tiltY * v + bow * (u * u + v * v - 2.0 / 3);
      double upper = top[i] + at(error[LayerStack.topOf(ply[i])], i);
      double lower = bottom[i] + at(error[LayerStack.bottomOf(ply[i])], i);
      boolean out = asCut + sandedBy < upper || asCut + sandedBy > lower;
      wrong += out || (!sanded[i] && (asCut < upper || asCut > lower)) ? 1 : 0;
    }
    return wrong;
  }

  private double at(double[] form, int i) {
    double u = x[i] / LayupReadings.UNIT_MM;
    double v = y[i] / LayupReadings.UNIT_MM;
    return form[0]
        + (form[1] * x[i] + form[2] * y[i]) / LayupReadings.UNIT_MM
        + form[3] * (u * u + v * v);
  }
}
