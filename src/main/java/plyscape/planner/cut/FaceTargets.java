package plyscape.planner.cut;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import plyscape.region.Face;
import plyscape.region.FaceField;
import plyscape.simulate.Target;

/** Hands faces to the simulator as figures: one target for all regions that have the same face. */
public final class FaceTargets {

  private FaceTargets() {}

  public static List<Target> of(FaceField field) {
    Map<Face, List<double[]>> outlines = new LinkedHashMap<>();
    for (int i = 0; i < field.faces().size(); i++) {
      outlines
          .computeIfAbsent(field.faces().get(i), face -> new ArrayList<>())
          .addAll(Proof.rings(field.polygons().get(i)));
    }
    List<Target> targets = new ArrayList<>();
    outlines.forEach((face, rings) -> targets.add(target(field, face, rings)));
    return targets;
  }

  private static Target target(FaceField field, Face face, List<double[]> rings) {
    double[][] outlines = rings.toArray(double[][]::new);
    return face.flat()
        ? new Target(face.plyNumber(), face.upperMm(), outlines)
        : new Target(
            face.plyNumber(),
            face.lowerMm(),
            outlines,
            new plyscape.simulate.SculptedDepth(
                field.relief(),
                face.highM(),
                face.lowM(),
                face.upperMm(),
                face.lowerMm(),
                field.cuspMm()));
  }
}
