package plyscape.toolpath;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.machine.Tool;
import plyscape.toolpath.task.PocketLevel;

/** Levels that show only in parts narrower than a lattice step, wherever these lie on it. */
class ThinPartsTest {

  private static final GeometryFactory FACTORY = new GeometryFactory();

  private static final Box CARVED = new Box(0, 0, 16, 8);

  private static final double CELL_MM = 0.025;

  /** Between two full steps of 0.5 mm, so that it needs a step of its own. */
  private static final double UPPER_MM = 1.2;

  private static final double LOWER_MM = 2;

  /** Widths of parts, mm. */
  private static final double THIN_MM = 0.06;

  @Test
  void ridgeBetweenTwoPockets_isCutToItsDepth() {
    eachPlace(x -> ridge(x), x -> x, tool(1.5));
  }

  @Test
  void ridgeBetweenTwoPockets_isCutByTheSecondCutterWhereTheFirstIsTooLarge() {
    MultiPolygon narrow = boxes(new Envelope(6.2, 9.4, 1, 7));
    eachPlace(
        x ->
            levels(
                boxes(new Envelope(6.2, 9.4, 1, 7), new Envelope(11, 15, 1, 7)),
                (MultiPolygon) ridge(x).get(1).pocket().intersection(narrow)),
        x -> x,
        tool(4),
        tool(1.5));
  }

  @Test
  void ledgeAlongWall_isCutToItsDepth() {
    eachPlace(
        x -> levels(boxes(new Envelope(x, 15, 1, 7)), boxes(new Envelope(x + THIN_MM, 15, 1, 7))),
        x -> x + THIN_MM / 2,
        tool(1.5));
  }

  @Test
  void ledgesOfNarrowStreet_areCutToTheirDepth() {
    eachPlace(
        x ->
            levels(
                boxes(new Envelope(x, x + 1.64, 1, 7)),
                boxes(new Envelope(x + THIN_MM, x + 1.64 - THIN_MM, 1, 7))),
        x -> x + THIN_MM / 2,
        tool(1.5));
  }

  private interface Panel {
    List<PocketLevel> at(double x);
  }

  private interface Middle {
    double at(double x);
  }

  /** Plans and cuts with the part at several places of the lattice. */
  private static void eachPlace(Panel panel, Middle middle, Tool... tools) {
    for (int place = 0; place < 4; place++) {
      double x = 7.5 + place * 0.031;
      List<PocketLevel> levels = panel.at(x);
      CutCheck check = new CutCheck(CARVED, CELL_MM);
      check.run(
          PathPlanner.plan(levels, List.of(tools), PathTrial.MACHINE, CARVED, new Warnings()));
      check.compare(levels, List.of(tools));
      String where = "at " + x + check.faults() + " " + check.notes;
      assertEquals(0, check.gougedMm2 + check.rapidThroughMm2, where);
      assertEquals(0, Math.max(0.001, check.overBiteMm) - 0.001, where);
      assertEquals(List.of(), standing(check, middle.at(x)), where);
    }
  }

  /** Cells along the middle of a part that aren't cut to the upper level's depth. */
  private static List<String> standing(CutCheck check, double x) {
    List<String> standing = new ArrayList<>();
    int i = (int) ((x - check.carved.minX()) / CELL_MM);
    for (int j = 0; j < check.rows; j++) {
      double y = check.y(j);
      if (y > 2 && y < 6 && Math.abs(check.cut[j * check.columns + i] - UPPER_MM) > 0.001) {
        standing.add(y + ": " + check.cut[j * check.columns + i]);
      }
    }
    return standing;
  }

  private static Tool tool(double diameterMm) {
    return PathPlannerTest.tool(diameterMm, 0.5, 0.45);
  }

  private static List<PocketLevel> ridge(double x) {
    return levels(
        boxes(new Envelope(1, 15, 1, 7)),
        boxes(new Envelope(1, x - THIN_MM / 2, 1, 7), new Envelope(x + THIN_MM / 2, 15, 1, 7)));
  }

  private static List<PocketLevel> levels(MultiPolygon upper, MultiPolygon lower) {
    Geometry shown = upper.difference(lower);
    MultiPolygon exposed =
        shown instanceof Polygon one
            ? FACTORY.createMultiPolygon(new Polygon[] {one})
            : (MultiPolygon) shown;
    return List.of(
        new PocketLevel(2, UPPER_MM, upper, exposed), new PocketLevel(3, LOWER_MM, lower, lower));
  }

  private static MultiPolygon boxes(Envelope... boxes) {
    Polygon[] polygons = new Polygon[boxes.length];
    for (int b = 0; b < boxes.length; b++) {
      polygons[b] = (Polygon) FACTORY.toGeometry(boxes[b]);
    }
    return FACTORY.createMultiPolygon(polygons);
  }
}
