package plyscape.shop;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.layup.Depths;
import plyscape.machine.Machine;
import plyscape.machine.Tool;
import plyscape.toolpath.task.PocketLevel;

/**
 * A stepped test cut: pads side by side, each one step deeper than the one before, in rows from the
 * lower left corner of an offcut. The pad on which a colour is first seen tells where its ply
 * begins, to within a step. Immutable.
 *
 * @param widthMm offcut, X
 * @param heightMm offcut, Y
 * @param stepMm height of a step
 * @param readingErrorMm greatest error of a reading: half a step and the machine's Z error
 * @param pads in order of depth
 * @param unseen plies whose bottom lies too deep to be cut
 */
public record Coupon(
    double widthMm,
    double heightMm,
    double stepMm,
    double readingErrorMm,
    List<Pad> pads,
    List<Integer> unseen) {

  /**
   * One pad.
   *
   * @param number from 1
   * @param depthMm of its floor
   * @param box on the offcut
   */
  public record Pad(int number, double depthMm, Box box) {}

  /**
   * What the maker asks for.
   *
   * @param widthMm offcut, X
   * @param heightMm offcut, Y
   * @param stepMm height of a step, or null for what the plies want
   * @param floorMm wood to be left under the deepest pad
   */
  public record Wish(double widthMm, double heightMm, Double stepMm, double floorMm) {}

  /**
   * Lays a coupon out ({@link CouponLayout}).
   *
   * @throws JobFault if offcut, tool or machine are too small, or the plies too thin to be
   *     distinguished
   */
  public static Coupon of(Depths depths, Wish wish, Tool tool, Machine machine, Warnings warnings) {
    return new CouponLayout(depths, wish, tool, machine).coupon(warnings);
  }

  /** Depth of the deepest pad. */
  public double deepestMm() {
    return pads.get(pads.size() - 1).depthMm();
  }

  /** The part of the offcut that is cut, and no more. */
  public Box carved() {
    Envelope all = new Envelope();
    for (Pad pad : pads) {
      all.expandToInclude(pad.box().minX(), pad.box().minY());
      all.expandToInclude(pad.box().maxX(), pad.box().maxY());
    }
    return new Box(all.getMinX(), all.getMinY(), all.getMaxX(), all.getMaxY());
  }

  /** The pads as nested pockets, numbered as the pads are, for the path planner. */
  public List<PocketLevel> levels() {
    GeometryFactory factory = new GeometryFactory();
    List<PocketLevel> levels = new ArrayList<>();
    for (int k = 0; k < pads.size(); k++) {
      List<Polygon> pocket = new ArrayList<>();
      for (int from = k; from < pads.size(); ) {
        int to = from;
        while (to + 1 < pads.size()
            && pads.get(to + 1).box().minY() == pads.get(from).box().minY()) {
          to++;
        }
        pocket.add(rectangle(factory, pads.get(from).box(), pads.get(to).box()));
        from = to + 1;
      }
      MultiPolygon exposed =
          factory.createMultiPolygon(
              new Polygon[] {rectangle(factory, pads.get(k).box(), pads.get(k).box())});
      levels.add(
          new PocketLevel(
              pads.get(k).number(),
              pads.get(k).depthMm(),
              factory.createMultiPolygon(pocket.toArray(new Polygon[0])),
              exposed));
    }
    return levels;
  }

  private static Polygon rectangle(GeometryFactory factory, Box first, Box last) {
    return factory.createPolygon(
        new Coordinate[] {
          new Coordinate(first.minX(), first.minY()),
          new Coordinate(last.maxX(), first.minY()),
          new Coordinate(last.maxX(), first.maxY()),
          new Coordinate(first.minX(), first.maxY()),
          new Coordinate(first.minX(), first.minY())
        });
  }
}
