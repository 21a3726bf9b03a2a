package plyscape.toolpath;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import plyscape.machine.Machine;
import plyscape.machine.Tool;

/**
 * Decides part by part whether a step's floor is cleared by rings or by straight runs, along the
 * ply's grain or along the part's longer side, whichever takes less time in a dry run. The rings
 * along the walls stay in any case, so walls are finished the same way.
 */
final class RunChoice {

  /** Smaller parts than so many squares of the stepover keep their rings. */
  private static final double LEAST_SQUARES = 16;

  /** Parts that fill less than this of the narrowest rectangle around them keep their rings. */
  private static final double LEAST_FULLNESS = 0.6;

  /**
   * Runs must take less than this share of what rings take: a dry run by itself is off by some per
   * cent.
   */
  private static final double SURE = 0.95;

  /** Turning at the end of a run takes as long as so much way, mm. */
  private static final double TURN_MM = 4;

  /** Directions nearer to each other than this aren't tried both, degrees. */
  private static final double SAME_DEGREES = 10;

  private final Lattice lattice;
  private final Tool tool;
  private final Machine machine;
  private final PathOptions options;

  RunChoice(Lattice lattice, Tool tool, Machine machine, PathOptions options) {
    this.lattice = lattice;
    this.tool = tool;
    this.machine = machine;
    this.options = options;
  }

  /** A way to clear a part, and what it takes. */
  private record Way(List<Ring> lines, double seconds) {}

  /**
   * The rings, with runs in place of those of some parts.
   *
   * @param state what is to be cleared, see {@link RingCover}; not changed
   * @param field on which the rings were drawn
   * @param leastMm value of the field on the outermost ring that runs may stand for
   * @param mask where anything is to be cleared
   * @param rings inside the wall ring
   */
  List<Ring> choose(
      StepWork work,
      byte[] state,
      float[] field,
      double leastMm,
      CoarseMap mask,
      List<Ring> rings) {
    InnerParts parts = new InnerParts(lattice, field, leastMm, mask);
    List<InnerPart> all = parts.all();
    List<List<Ring>> inside = new ArrayList<>();
    all.forEach(part -> inside.add(new ArrayList<>()));
    List<Ring> chosen = new ArrayList<>();
    for (Ring ring : rings) {
      int part = ring.index() < StraightRuns.LOWEST_INDEX ? -1 : parts.of(ring);
      (part < 0 ? chosen : inside.get(part)).add(ring);
    }
    List<Ring> around = List.copyOf(chosen);
    IntStream.range(0, all.size())
        .parallel()
        .mapToObj(p -> best(work, all.get(p), inside.get(p), around, state))
        .toList()
        .forEach(chosen::addAll);
    return chosen;
  }

  /**
   * @param around rings that come after those in the parts: what they then find left counts too
   */
  private List<Ring> best(
      StepWork work, InnerPart part, List<Ring> rings, List<Ring> around, byte[] state) {
    double least = LEAST_SQUARES * tool.stepoverMm() * tool.stepoverMm();
    if (rings.isEmpty()
        || part.areaMm2() < least
        || part.mostFullness() < LEAST_FULLNESS
        || part.fullness() < LEAST_FULLNESS) {
      return rings;
    }
    var window = new Window(lattice, part.box(), tool.radiusMm(), state);
    var runs = new StraightRuns(part, tool.stepoverMm());
    double grain = work.field().level().grainDegrees();
    double longer = part.longerSideDegrees();
    List<Ring> after = around.stream().filter(window::meets).toList();
    List<List<Ring>> ways = new ArrayList<>();
    ways.add(rings);
    ways.add(fromOpenSide(runs, grain, window));
    if (Math.abs(Math.IEEEremainder(grain - longer, 180)) > SAME_DEGREES) {
      ways.add(fromOpenSide(runs, longer, window));
    }
    double most = roughMm(rings);
    ways.removeIf(lines -> lines != rings && roughMm(lines) > most);
    if (ways.size() == 1) {
      return rings;
    }
    return ways.stream()
        .parallel()
        .map(
            lines ->
                new Way(lines, seconds(work, lines, after, window) * (lines == rings ? SURE : 1)))
        .toList()
        .stream()
        .min(Comparator.comparingDouble(Way::seconds))
        .orElseThrow()
        .lines();
  }

  /** Runs that begin on the side where less stands under the first of them: a slot is avoided. */
  private List<Ring> fromOpenSide(StraightRuns runs, double degrees, Window window) {
    List<Ring> right = runs.along(degrees, false);
    List<Ring> left = runs.along(degrees, true);
    return window.standing(left, tool.radiusMm()) < window.standing(right, tool.radiusMm())
        ? left
        : right;
  }

  /** What lines come to before any dry run: their length, and a stop at each end of a run, mm. */
  private double roughMm(List<Ring> lines) {
    double sum = 0;
    for (Ring line : lines) {
      sum += line.lengthMm() + tool.stepoverMm() + (line.closed() ? 0 : TURN_MM);
    }
    return sum;
  }

  private double seconds(StepWork work, List<Ring> lines, List<Ring> after, Window window) {
    List<Ring> all = new ArrayList<>(lines);
    all.addAll(after);
    byte[] covered = window.state.clone();
    List<Piece> pieces =
        new RingCover(
                window.lattice,
                covered,
                window.wanted(tool.radiusMm()),
                tool.radiusMm(),
                tool.stepoverMm())
            .choose(all, (x, y) -> false);
    var run = new DryRun(window.lattice, window.state.clone(), tool, machine, options);
    if (!pieces.isEmpty()) {
      Piece first = pieces.get(0);
      var only = new StepWork(work.step(), work.field(), pieces, work.spacingMm());
      new PieceOrder(List.of(only), tool, machine).run(first.x()[0], first.y()[0], run);
    }
    return run.seconds() + run.restSeconds();
  }

  /** The nodes around a part, by themselves. */
  private static final class Window {
    final Lattice lattice;
    final byte[] state;

    Window(Lattice whole, int[] box, double radiusMm, byte[] all) {
      int more = (int) Math.ceil(radiusMm / whole.stepMm()) + 2;
      int left = Math.max(0, box[0] - more);
      int right = Math.min(whole.columns() - 1, box[1] + more);
      int bottom = Math.max(0, box[2] - more);
      int top = Math.min(whole.rows() - 1, box[3] + more);
      int columns = right - left + 1;
      lattice =
          new Lattice(whole.x(left), whole.y(bottom), whole.stepMm(), columns, top - bottom + 1);
      state = new byte[lattice.size()];
      for (int j = bottom; j <= top; j++) {
        int from = j * whole.columns() + left;
        System.arraycopy(all, from, state, (j - bottom) * columns, columns);
      }
    }

    /** Blocks near which something is to be cleared. */
    CoarseMap wanted(double radiusMm) {
      CoarseMap all = CoarseMap.everywhere(lattice);
      return new CoarseMap(lattice, state, RingCover.WANTED, radiusMm, all);
    }

    /** Whether a ring has a point in it. */
    boolean meets(Ring ring) {
      for (int i = 0; i < ring.size(); i++) {
        double column = (ring.x()[i] - lattice.minX()) / lattice.stepMm();
        double row = (ring.y()[i] - lattice.minY()) / lattice.stepMm();
        if (column >= 0 && column < lattice.columns() && row >= 0 && row < lattice.rows()) {
          return true;
        }
      }
      return false;
    }

    /** Nodes that stand under the first runs, for each mm of them. */
    double standing(List<Ring> runs, double radiusMm) {
      int first = runs.stream().mapToInt(Ring::index).max().orElse(0);
      Sweep sweep = new Sweep(lattice);
      int[] count = {0};
      double length = 1e-9;
      for (Ring run : runs) {
        if (run.index() == first) {
          length += run.lengthMm();
          sweep.fresh(
              run.x()[0],
              run.y()[0],
              run.x()[1],
              run.y()[1],
              radiusMm,
              (a, b) -> {
                for (int node = a; node <= b; node++) {
                  count[0] += state[node] == RingCover.DONE ? 0 : 1;
                }
              });
        }
      }
      return count[0] / length;
    }
  }
}
