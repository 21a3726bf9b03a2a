package plyscape.planner.cut;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.fault.VerifyFault;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.plan.CutoutArea;
import plyscape.plan.Landscape;
import plyscape.plan.LyingPanel;
import plyscape.simulate.Bite;
import plyscape.simulate.CellVerdict;
import plyscape.simulate.CutResult;
import plyscape.simulate.Difference;
import plyscape.simulate.Setup;
import plyscape.simulate.Simulation;
import plyscape.simulate.Target;
import plyscape.simulate.Verification;
import plyscape.text.Template;

/**
 * Hands the programs, as they were read back, and the regions to the simulator, and refuses what
 * would spoil a panel.
 */
public final class Proof {

  private Proof() {}

  /** A panel to cut the programs into, in simulation. */
  public static Simulation begin(Landscape regions, List<CutoutArea> cutouts, double cellMm) {
    List<Target> targets =
        new ArrayList<>(regions.faces().map(FaceTargets::of).orElseGet(() -> flat(regions)));
    cutouts.forEach(area -> targets.add(target(area)));
    return new Simulation(
        new Setup(
            new Box(0, 0, regions.job().panel().widthMm(), regions.job().panel().heightMm()),
            regions.thicknessMm(),
            Cutouts.throughMm(regions.job()),
            regions.job().layup().flatnessMm(),
            regions.tiling().carved(),
            regions.job().machine(),
            cellMm,
            LyingPanel.of(regions)),
        targets);
  }

  private static Target target(CutoutArea area) {
    return new Target(0, area.depthMm(), cutoutRings(area), null, area.slackMm(), area.level());
  }

  /** Outlines of what pins or outline cut, each x, y, x, y ... */
  private static double[][] cutoutRings(CutoutArea area) {
    List<double[]> rings = new ArrayList<>();
    for (int i = 0; i < area.area().getNumGeometries(); i++) {
      rings.addAll(rings((Polygon) area.area().getGeometryN(i)));
    }
    return rings.toArray(double[][]::new);
  }

  /** Compares what the programs cut with the plan's regions. */
  public static CutResult of(Landscape regions, Simulation cut) {
    return cut.compare(regions.job().tools());
  }

  private static List<Target> flat(Landscape regions) {
    List<Target> targets = new ArrayList<>();
    regions
        .tiling()
        .exposed()
        .forEach(
            (ply, shape) ->
                targets.add(new Target(ply, regions.depths().of(ply).targetMm(), rings(shape))));
    return targets;
  }

  /**
   * Lets only safe programs pass.
   *
   * @throws VerifyFault if they gouge or collide, with the worst place
   */
  static void require(CutResult result) {
    Verification v = result.verification();
    if (v.safe()) {
      return;
    }
    List<String> faults = new ArrayList<>();
    if (v.gougedMm2() > 0) {
      String place =
          result.differences().stream()
              .filter(d -> d.verdict() == CellVerdict.GOUGED)
              .findFirst()
              .map(
                  d ->
                      Template.fill(
                          ", worst at X%.2f Y%.2f: %.3f mm deep for %.3f",
                          d.x(), d.y(), d.depthMm(), d.targetMm()))
              .orElse("");
      faults.add(
          Template.fill(
              "it gouges %.3f mm2, up to %.3f mm over a wall%s",
              v.gougedMm2(), v.gougeMaxMm(), place));
    }
    if (!v.collisions().isEmpty()) {
      Verification.Collision c = v.collisions().get(0);
      faults.add(
          Template.fill(
              "%d collisions, the first in %s line %d at X%.2f Y%.2f: %s",
              v.collisions().size(), c.file(), c.line(), c.x(), c.y(), c.what()));
    }
    for (Bite bite : v.bitesTooDeep()) {
      faults.add(
          Template.fill(
              "%s line %d at X%.2f Y%.2f bites %.3f mm at once, the stepdown is %.3f",
              bite.file(), bite.line(), bite.x(), bite.y(), bite.biteMm(), bite.stepdownMm()));
    }
    throw new VerifyFault(
        "the G-code failed its simulation and was not written: " + String.join("; ", faults),
        "check the machine's travel and the cutters' lengths in the job; if those are right, please"
            + " report it with the job");
  }

  /**
   * Warns, with code {@code left-uncut}, of wood that a cutter could have reached and that will
   * stand.
   */
  static void warn(CutResult result, Warnings warnings) {
    double uncut = result.verification().uncutMm2();
    if (result.verification().leavesWood(0)) {
      Difference worst =
          result.differences().stream()
              .filter(d -> d.verdict() == CellVerdict.UNCUT)
              .findFirst()
              .orElseThrow();
      warnings.add(
          "left-uncut",
          Template.fill(
              "%.2f mm2 that a cutter could reach are left too high, the most about this place",
              uncut),
          Template.fill("X%.2f Y%.2f", worst.x(), worst.y()));
    }
  }

  private static double[][] rings(MultiPolygon shape) {
    List<double[]> rings = new ArrayList<>();
    for (int i = 0; i < shape.getNumGeometries(); i++) {
      rings.addAll(rings((Polygon) shape.getGeometryN(i)));
    }
    return rings.toArray(double[][]::new);
  }

  /** A polygon's outlines, the outer one first, each x, y, x, y ... */
  static List<double[]> rings(Polygon polygon) {
    List<double[]> rings = new ArrayList<>();
    rings.add(ring(polygon.getExteriorRing()));
    for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
      rings.add(ring(polygon.getInteriorRingN(h)));
    }
    return rings;
  }

  private static double[] ring(LinearRing ring) {
    Coordinate[] points = ring.getCoordinates();
    double[] xy = new double[2 * points.length];
    for (int i = 0; i < points.length; i++) {
      xy[2 * i] = points[i].x;
      xy[2 * i + 1] = points[i].y;
    }
    return xy;
  }
}
