package plyscape.recheck;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.report.json.FaceFigures;
import plyscape.simulate.SculptedDepth;
import plyscape.simulate.Target;

/** Joins the faces of a sculpted plan with the outlines that its layers give. */
final class SculptedTargets {

  private final String file;
  private final FaceFigures figures;

  /** Of a faces file. */
  SculptedTargets(String file, FaceFigures figures) {
    this.file = file;
    this.figures = figures;
  }

  /**
   * The targets of one ply, one for all regions with the same face.
   *
   * @param rings outlines of the ply's layer, in its order
   * @throws InputFault if the faces speak of more or fewer outlines
   */
  List<Target> of(int ply, List<double[]> rings) {
    Map<FaceFigures.FaceFigure, List<double[]>> outlines = new LinkedHashMap<>();
    int next = 0;
    for (FaceFigures.FaceFigure face : figures.faces()) {
      if (face.ply() == ply) {
        int end = next + face.rings();
        if (end > rings.size()) {
          throw fault(ply, rings.size());
        }
        FaceFigures.FaceFigure key =
            new FaceFigures.FaceFigure(
                ply, 1, face.highM(), face.lowM(), face.upperMm(), face.lowerMm());
        outlines.computeIfAbsent(key, k -> new ArrayList<>()).addAll(rings.subList(next, end));
        next = end;
      }
    }
    if (next != rings.size()) {
      throw fault(ply, rings.size());
    }
    List<Target> targets = new ArrayList<>();
    outlines.forEach((face, own) -> targets.add(target(face, own.toArray(double[][]::new))));
    return targets;
  }

  private Target target(FaceFigures.FaceFigure face, double[][] rings) {
    return face.upperMm() == face.lowerMm()
        ? new Target(face.ply(), face.upperMm(), rings)
        : new Target(
            face.ply(),
            face.lowerMm(),
            rings,
            new SculptedDepth(
                figures.relief(),
                face.highM(),
                face.lowM(),
                face.upperMm(),
                face.lowerMm(),
                figures.cuspMm()));
  }

  private InputFault fault(int ply, int rings) {
    return new InputFault(
        Place.file(file),
        "its faces of ply " + ply + " don't fit the " + rings + " outlines of the layer",
        "write the plan again");
  }
}
