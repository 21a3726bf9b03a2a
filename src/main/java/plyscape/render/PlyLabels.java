package plyscape.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.geom.Coordinate;
import plyscape.plan.Plan;
import plyscape.region.Region;

/** Places for ply numbers on the panel: the middles of the widest places of the largest regions. */
public final class PlyLabels {

  /** Regions looked at for one ply, largest first. */
  private static final int EACH = 8;

  /** How near to the widest place is near enough, mm. */
  private static final double NEAR_MM = 0.5;

  private PlyLabels() {}

  /** A number's middle and the radius around it that is free, panel mm. */
  public record Label(int plyNumber, double x, double y, double radiusMm) {}

  /** Labels in ply order; only where a circle of the given radius has room. */
  public static List<Label> of(Plan plan, double leastRadiusMm) {
    List<Label> labels = new ArrayList<>();
    for (int ply : plan.tiling().exposed().keySet()) {
      plan.tiling().regions().stream()
          .filter(r -> r.plyNumber() == ply && r.polygon().getArea() > Math.PI * leastRadiusMm * leastRadiusMm)
          .sorted(Comparator.comparingDouble((Region r) -> -r.polygon().getArea()))
          .limit(EACH)
          .forEach(r -> add(labels, r, leastRadiusMm));
    }
    return List.copyOf(labels);
  }

  private static void add(List<Label> labels, Region region, double leastRadiusMm) {
    MaximumInscribedCircle circle = new MaximumInscribedCircle(region.polygon(), NEAR_MM);
    Coordinate middle = circle.getCenter().getCoordinate();
    double radius = circle.getRadiusLine().getLength();
    if (radius >= leastRadiusMm) {
      labels.add(new Label(region.plyNumber(), middle.x, middle.y, radius));
    }
  }
}
