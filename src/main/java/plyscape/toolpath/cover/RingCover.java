package plyscape.toolpath.cover;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;
import plyscape.toolpath.lattice.CoarseMap;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.lattice.Sweep;
import plyscape.toolpath.ring.Chunks;
import plyscape.toolpath.ring.Piece;

/**
 * Chooses the stretches of rings that a pass needs. Rings are tried from the inside out, as they
 * will be cut; a stretch is kept when its disk would newly clear enough of what the pass is to
 * clear, so that each stretch takes a band of at most about one stepover. What an inner ring leaves
 * as a mere sliver is left to the next ring out.
 */
public final class RingCover {

  /** Nothing to do with a node in this pass. */
  static final byte DONE = 0;

  /** Stands, but isn't this pass's business. */
  static final byte STANDING = 1;

  /** Is to be cleared. */
  public static final byte WANTED = 2;

  /** Was left by the ordinary rings; the ones between are for it. */
  public static final byte LEFT = 3;

  /**
   * Bit of wanted nodes at the edge of what the cutter reaches: it may touch them with its very
   * rim.
   */
  static final byte RIM = 4;

  /**
   * Bit of wanted nodes in small patches: the wall ring alone takes what it can of them, in one cut
   * at less feed.
   */
  static final byte SMALL = 8;

  /**
   * A ring's stretch that would take less than this share of the stepover is left to the next ring.
   */
  private static final double SLIVER = 0.3;

  /** Gaps shorter than this are cut through: lifting over them would take longer. */
  private static final double GAP_MM = 6;

  /** Rings whose cover is found together. */
  private static final int GROUP = 64;

  private final Lattice lattice;
  private final Sweep sweep;
  private final byte[] state;
  private final double radius;
  private final double sure;
  private final double stepover;
  private int wanted;
  private int left;
  private CoarseMap blocks;

  /**
   * @param state of the nodes; what is chosen is marked
   * @param near blocks near which something is wanted
   */
  public RingCover(
      Lattice lattice, byte[] state, CoarseMap near, double radiusMm, double stepoverMm) {
    blocks = near;
    this.lattice = lattice;
    this.state = state;
    this.radius = radiusMm;
    this.stepover = stepoverMm;
    // What lies this far within the disk's rim is cleared up to the middle between nodes: no speck
    // hides there.
    sure = Math.max(radiusMm / 2, radiusMm - 0.71 * lattice.stepMm());
    sweep = new Sweep(lattice);
  }

  /**
   * Whether the wall at a point of the wall ring still needs this cutter, whatever the lattice
   * says.
   */
  public interface WallNeed {
    boolean at(double x, double y);
  }

  /**
   * The stretches needed, inner ones first; marks what they clear.
   *
   * @param leastSpotMm2 what a short ring at a wall must clear, mm2; less is left to a later cutter
   * @param skipped marks the nodes so left
   */
  public List<Piece> choose(
      List<Ring> rings, WallNeed need, double leastSpotMm2, boolean[] skipped) {
    List<Ring> order = new ArrayList<>(rings);
    order.sort(Comparator.comparingInt((Ring ring) -> -ring.index()));
    List<Piece> pieces = new ArrayList<>();
    inGroups(
        order,
        false,
        cover -> {
          if (!leave(cover.ring, leastSpotMm2, skipped)) {
            choose(cover, need, false, pieces);
          }
        });
    return pieces;
  }

  /**
   * Leaves what a short ring at a wall would clear standing if that isn't worth coming down for.
   */
  private boolean leave(Ring ring, double leastMm2, boolean[] skipped) {
    if (leastMm2 <= 0 || ring.index() != 0 || ring.lengthMm() > radius) {
      return false;
    }
    wanted = 0;
    around(ring, this::tally);
    if (wanted * lattice.nodeAreaMm2() >= leastMm2) {
      return false;
    }
    around(
        ring,
        (first, last) -> {
          for (int k = first; k <= last; k++) {
            if ((state[k] & WANTED) != 0) {
              state[k] = STANDING;
              skipped[k] = true;
            }
          }
        });
    return true;
  }

  /** All nodes under the disk on its way along a ring, each once for a ring within its disk. */
  private void around(Ring ring, Sweep.Run run) {
    int n = ring.size();
    sweep.all(ring.x()[0], ring.y()[0], ring.x()[0], ring.y()[0], radius, run);
    for (int i = 1; i < n; i++) {
      sweep.fresh(ring.x()[i - 1], ring.y()[i - 1], ring.x()[i], ring.y()[i], radius, run);
    }
  }

  /** Stretches of any rings that clear what was marked {@link #LEFT}; marks what they clear. */
  public List<Piece> chooseForLeft(List<Ring> rings) {
    blocks = new CoarseMap(lattice, state, LEFT, radius, blocks);
    List<Ring> order = new ArrayList<>(blocks.near(rings));
    order.sort(Comparator.comparingInt((Ring ring) -> -ring.index()));
    List<Piece> pieces = new ArrayList<>();
    inGroups(order, true, cover -> choose(cover, (x, y) -> false, true, pieces));
    return pieces;
  }

  /** Hands rings over one by one; what they cover is found for a group of them at a time. */
  private void inGroups(List<Ring> order, boolean onlyLeft, Consumer<ChunkCover> each) {
    for (int from = 0; from < order.size(); from += GROUP) {
      order.subList(from, Math.min(order.size(), from + GROUP)).parallelStream()
          .map(ring -> cover(ring, onlyLeft))
          .toList()
          .forEach(each);
    }
  }

  private ChunkCover cover(Ring ring, boolean onlyLeft) {
    Chunks chunks = Chunks.of(ring, Math.max(4 * lattice.stepMm(), Math.min(1, radius / 3)));
    boolean wall = ring.index() == 0; // looked at otherwise
    return new ChunkCover(
        ring, chunks, lattice, sure, c -> !wall && (!onlyLeft || near(chunks, c)));
  }

  private boolean near(Chunks chunks, int c) {
    return blocks.near(chunks.x(chunks.start(c)), chunks.y(chunks.start(c)));
  }

  private void choose(ChunkCover cover, WallNeed need, boolean onlyLeft, List<Piece> pieces) {
    Ring ring = cover.ring;
    Chunks chunks = cover.chunks;
    boolean[] keep = new boolean[chunks.count()];
    boolean before = false;
    boolean any = false;
    for (int c = 0; c < keep.length; c++) {
      keep[c] = (!onlyLeft || near(chunks, c)) && needed(cover, c, need, onlyLeft);
      any |= keep[c];
      if (keep[c]) {
        if (before && ring.index() != 0) {
          cover.each(c, this::done);
        } else {
          clear(chunks, c, before, sure, this::done);
        }
        if (ring.index() == 0) {
          clear(chunks, c, before, radius, this::clearRim);
        }
      }
      before = keep[c];
    }
    if (!any) {
      return;
    }
    if (ring.index() == 0 && !onlyLeft) {
      widen(keep, ring.closed());
    }
    close(keep, chunks, ring.closed());
    runs(ring, chunks, keep, pieces);
  }

  private boolean needed(ChunkCover cover, int c, WallNeed need, boolean onlyLeft) {
    Chunks chunks = cover.chunks;
    wanted = 0;
    left = 0;
    boolean wall = cover.ring.index() == 0;
    double length = 0;
    for (int i = chunks.start(c); i < chunks.start(c + 1); i++) {
      double ax = chunks.x(i);
      double ay = chunks.y(i);
      double bx = chunks.x(i + 1);
      double by = chunks.y(i + 1);
      length += Math.sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay));
      if (wall) {
        // Tight places, which are open, go by the nodes alone: the rings along the walls have been
        // asked already.
        if (cover.ring.closed() && (need.at(ax, ay) || need.at((ax + bx) / 2, (ay + by) / 2))) {
          return true;
        }
        if (blocks.near(ax, ay)) {
          sweep.all(ax, ay, bx, by, radius, this::tally);
        }
      }
    }
    cover.each(c, onlyLeft ? this::tally : this::tallyLarge);
    if (onlyLeft) {
      return left > 0;
    }
    if (wall) {
      return wanted > 0;
    }
    return wanted * lattice.nodeAreaMm2() > SLIVER * stepover * length;
  }

  private void done(int first, int last) {
    for (int k = first; k <= last; k++) {
      state[k] = DONE;
    }
  }

  private void tallyLarge(int first, int last) {
    for (int k = first; k <= last; k++) {
      if ((state[k] & (WANTED | SMALL)) == WANTED) {
        wanted++;
      }
    }
  }

  private void tally(int first, int last) {
    for (int k = first; k <= last; k++) {
      if ((state[k] & WANTED) != 0) {
        wanted++;
        if ((state[k] & LEFT) == LEFT) {
          left++;
        }
      }
    }
  }

  private void clear(Chunks chunks, int c, boolean goesOn, double reach, Sweep.Run run) {
    for (int i = chunks.start(c); i < chunks.start(c + 1); i++) {
      if (goesOn || i > chunks.start(c)) {
        sweep.fresh(chunks.x(i), chunks.y(i), chunks.x(i + 1), chunks.y(i + 1), reach, run);
      } else {
        sweep.all(chunks.x(i), chunks.y(i), chunks.x(i + 1), chunks.y(i + 1), reach, run);
      }
    }
  }

  private void clearRim(int first, int last) {
    for (int k = first; k <= last; k++) {
      if ((state[k] & RIM) != 0) {
        state[k] = DONE;
      }
    }
  }

  /**
   * A wall stretch is taken one chunk farther at both ends, where what is left thins out to
   * nothing.
   */
  private static void widen(boolean[] keep, boolean closed) {
    int n = keep.length;
    boolean[] old = keep.clone();
    for (int c = 0; c < n; c++) {
      if (!old[c]) {
        int a = c > 0 ? c - 1 : closed ? n - 1 : c;
        int b = c < n - 1 ? c + 1 : closed ? 0 : c;
        keep[c] = old[a] || old[b];
      }
    }
  }

  /** Fills short gaps. */
  private static void close(boolean[] keep, Chunks chunks, boolean closed) {
    int n = keep.length;
    int first = 0;
    while (first < n && !keep[first]) {
      first++;
    }
    if (first == n) {
      return;
    }
    int steps = closed ? n : n - first;
    double gap = 0;
    int since = -1;
    for (int s = 0; s <= steps; s++) {
      int c = (first + s) % n;
      if (s == steps && !closed) {
        break;
      }
      if (keep[c]) {
        if (since >= 0 && gap <= GAP_MM) {
          for (int t = since; t < s; t++) {
            keep[(first + t) % n] = true;
          }
        }
        since = -1;
        gap = 0;
      } else {
        if (since < 0) {
          since = s;
        }
        gap += chunks.lengthMm(c);
      }
    }
  }

  private static void runs(Ring ring, Chunks chunks, boolean[] keep, List<Piece> pieces) {
    int n = keep.length;
    int kept = 0;
    int gapAt = -1;
    for (int c = 0; c < n; c++) {
      if (keep[c]) {
        kept++;
      } else {
        gapAt = c;
      }
    }
    if (kept == 0) {
      return;
    }
    if (kept == n) {
      pieces.add(new Piece(ring.index(), ring.closed(), ring.x(), ring.y()));
      return;
    }
    int begin = ring.closed() ? gapAt + 1 : 0;
    int c = 0;
    while (c < n) {
      if (!keep[(begin + c) % n]) {
        c++;
        continue;
      }
      int end = c;
      while (end < n && keep[(begin + end) % n]) {
        end++;
      }
      pieces.add(chunks.piece(ring.index(), (begin + c) % n, end - c));
      c = end;
    }
  }
}
