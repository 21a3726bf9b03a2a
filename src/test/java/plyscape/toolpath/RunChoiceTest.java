package plyscape.toolpath;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;
import plyscape.grid.Box;
import plyscape.machine.MotionModel;
import plyscape.machine.Move;
import plyscape.machine.Tool;

/**
 * Rings or straight runs: on made pockets both are planned in full and timed by the machine's
 * model, and the choice, which goes by a dry run, must be the faster one.
 */
class RunChoiceTest {

  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final Box CARVED = new Box(2, 2, 92, 72);
  private static final Lattice LATTICE = Lattice.over(CARVED, 3);
  private static final CoarseMap ALL = CoarseMap.everywhere(LATTICE);
  private static final Tool TOOL = PathTrial.tool(6, 1800, 2, 0.45);
  private static final PathOptions OPTIONS = PathOptions.of(PathTrial.MACHINE);
  private static final double FIRST = TOOL.radiusMm() + TOOL.stepoverMm();

  private static Geometry box(double x0, double y0, double x1, double y1) {
    return FACTORY.toGeometry(new Envelope(x0, x1, y0, y1));
  }

  private static Geometry turned(Geometry shape, double degrees) {
    return AffineTransformation.rotationInstance(Math.toRadians(degrees), 47, 37).transform(shape);
  }

  /** What a pocket is cleared of, as the planner does it for one step of an untouched panel. */
  private static final class Job {
    final LevelField field;
    final byte[] state = new byte[LATTICE.size()];
    final CoarseMap mask;
    final float[] smooth;
    final StepWork work;
    final List<Ring> rings;

    Job(Geometry pocket, double grain) {
      var shape = RandomPockets.multi(pocket);
      var level = new PocketLevel(2, 1.2, shape, shape, grain);
      field = new LevelField(level, new DistanceField(new PocketEdges(shape), LATTICE));
      for (int node = 0; node < state.length; node++) {
        state[node] = field.field().distance[node] > 0 ? RingCover.WANTED : RingCover.DONE;
      }
      mask = new CoarseMap(LATTICE, state, RingCover.WANTED, TOOL.radiusMm(), ALL);
      int half = (int) Math.round(TOOL.stepoverMm() / 4 / LATTICE.stepMm());
      smooth =
          FieldSmoothing.smooth(field.field().distance, LATTICE.columns(), LATTICE.rows(), half);
      work = new StepWork(new DepthPlan.Step(0, 1.2, true, 0), field, List.of(), TOOL.stepoverMm());
      rings =
          field.innerRings(
              new RingTracer(LATTICE),
              smooth,
              TOOL.radiusMm(),
              TOOL.stepoverMm(),
              TOOL.stepoverMm(),
              mask,
              false);
    }

    List<Ring> chosen() {
      return new RunChoice(LATTICE, TOOL, PathTrial.MACHINE, OPTIONS)
          .choose(work, state, smooth, FIRST + TOOL.stepoverMm(), mask, rings);
    }

    /** Runs along a direction in all parts, whatever they take. */
    List<Ring> runs(double degrees) {
      List<Ring> lines = new ArrayList<>(rings.stream().filter(r -> r.index() < 4).toList());
      for (InnerPart part :
          new InnerParts(LATTICE, smooth, FIRST + TOOL.stepoverMm(), mask).all()) {
        lines.addAll(new StraightRuns(part, TOOL.stepoverMm()).along(degrees, false));
      }
      return lines;
    }

    /** Seconds for all of the pocket, planned in full. */
    double seconds(List<Ring> inner) {
      List<Ring> all =
          new ArrayList<>(field.wallRings(new RingTracer(LATTICE), TOOL.radiusMm(), 0));
      all.addAll(inner);
      byte[] left = state.clone();
      var cover = new RingCover(LATTICE, left, mask, TOOL.radiusMm(), TOOL.stepoverMm());
      List<Piece> pieces = new ArrayList<>(cover.choose(all, (x, y) -> false));
      if (ToolPlanner.left(left, ALL)) {
        all.addAll(
            field.innerRings(
                new RingTracer(LATTICE),
                smooth,
                TOOL.radiusMm(),
                TOOL.stepoverMm(),
                TOOL.stepoverMm(),
                mask,
                true));
        pieces.addAll(cover.chooseForLeft(all));
        pieces.addAll(new LeftSpots(LATTICE, field.field(), left, TOOL.radiusMm(), ALL).pieces());
      }
      double[] start = {all.get(0).x()[0], all.get(0).y()[0]};
      var cutter = new PassCutter(new Stock(LATTICE), TOOL, PathTrial.MACHINE, OPTIONS, start);
      var step = new StepWork(work.step(), field, pieces, TOOL.stepoverMm());
      new PieceOrder(List.of(step), TOOL, PathTrial.MACHINE).run(start[0], start[1], cutter::cut);
      List<Move> moves = cutter.passes().get(0).moves();
      return new MotionModel(PathTrial.MACHINE).times(start[0], start[1], -4, moves).totalS();
    }
  }

  private static Geometry comb() {
    Geometry comb = box(6, 6, 86, 24);
    for (int tooth = 0; tooth < 3; tooth++) {
      comb = comb.union(box(6 + 29 * tooth, 6, 28 + 29 * tooth, 66));
    }
    return comb;
  }

  @Test
  void slantedStrip_isClearedAlongItsLongerSide_andFaster() {
    // 74 x 20: between the wall's two rings there is room for an odd number of runs.
    Job job = new Job(turned(box(10, 27, 84, 47), 30), 0);
    List<Ring> chosen = job.chosen();
    List<Ring> runs = chosen.stream().filter(ring -> ring.index() >= 4).toList();
    assertFalse(runs.isEmpty());
    for (Ring run : runs) {
      double degrees = Math.toDegrees(Math.atan2(run.y()[1] - run.y()[0], run.x()[1] - run.x()[0]));
      assertEquals(30, degrees, 0.5);
      assertEquals(2, run.size());
    }
    assertTrue(job.seconds(chosen) < 0.92 * job.seconds(job.rings));
  }

  @Test
  void combAndRound_keepTheirRings_whichAreFaster() {
    Geometry round = FACTORY.createPoint(new Coordinate(47, 37)).buffer(30, 60);
    for (Geometry pocket : new Geometry[] {comb(), round}) {
      Job job = new Job(pocket, 90);
      assertEquals(Set.copyOf(job.rings), Set.copyOf(job.chosen()));
      assertTrue(job.seconds(job.rings) < job.seconds(job.runs(90)));
    }
  }

  @Test
  void runs_coverThePart_noFartherApartThanAsked() {
    Job job = new Job(turned(box(10, 20, 84, 54), 20), 0);
    for (InnerPart part :
        new InnerParts(LATTICE, job.smooth, FIRST + TOOL.stepoverMm(), job.mask).all()) {
      for (double degrees : new double[] {0, 37, 90, 145}) {
        double nx = -Math.sin(Math.toRadians(degrees));
        double ny = Math.cos(Math.toRadians(degrees));
        double[] off =
            new StraightRuns(part, TOOL.stepoverMm())
                .along(degrees, true).stream()
                    .mapToDouble(run -> run.x()[0] * nx + run.y()[0] * ny)
                    .sorted()
                    .toArray();
        assertTrue(off.length > 2);
        for (int i = 1; i < off.length; i++) {
          assertTrue(off[i] - off[i - 1] <= TOOL.stepoverMm() + 1e-9, "at " + off[i]);
        }
      }
    }
  }
}
