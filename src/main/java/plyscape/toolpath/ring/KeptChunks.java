package plyscape.toolpath.ring;

import java.util.List;
import plyscape.toolpath.lattice.Ring;

/** Which chunks of a ring are kept, and the pieces that they make. */
public final class KeptChunks {

  /** Gaps shorter than this are cut through: lifting over them would take longer. */
  private static final double GAP_MM = 10;

  /** Where a ring along a wall is cut round for the last time, longer gaps are left out, mm. */
  private static final double IDLE_MM = 1.5;

  private final Ring ring;
  private final Chunks chunks;
  private final boolean[] keep;
  private int count;

  /** The longest gap of a closed ring, mm, and the ring without it. */
  private double longest;

  private Piece needed;

  /** Of a ring, none kept yet. */
  public KeptChunks(Ring ring, Chunks chunks) {
    this.ring = ring;
    this.chunks = chunks;
    keep = new boolean[chunks.count()];
  }

  /** Keeps one. */
  public void keep(int chunk) {
    count += keep[chunk] ? 0 : 1;
    keep[chunk] = true;
  }

  /** Whether any is kept. */
  public boolean any() {
    return count > 0;
  }

  /** One chunk more at both ends of what is kept. */
  public void widen() {
    int n = keep.length;
    boolean[] old = keep.clone();
    for (int c = 0; c < n; c++) {
      if (!old[c]) {
        int a = c > 0 ? c - 1 : ring.closed() ? n - 1 : c;
        int b = c < n - 1 ? c + 1 : ring.closed() ? 0 : c;
        if (old[a] || old[b]) {
          keep(c);
        }
      }
    }
  }

  /** Fills short gaps. */
  public void closeGaps() {
    int n = keep.length;
    int first = firstKept();
    int steps = ring.closed() ? n + 1 : n - first;
    double gap = 0;
    int since = -1;
    for (int s = 0; s < steps; s++) {
      int c = (first + s) % n;
      if (keep[c]) {
        if (since >= 0 && gap <= GAP_MM) {
          for (int t = since; t < s; t++) {
            keep((first + t) % n);
          }
        }
        if (since >= 0 && gap > longest) {
          longest = gap;
          needed = chunks.piece(ring.index(), c, n - (s - since));
        }
        since = -1;
        gap = 0;
      } else {
        since = since < 0 ? s : since;
        gap += chunks.lengthMm(c);
      }
    }
  }

  private int firstKept() {
    int first = 0;
    while (!keep[first]) {
      first++;
    }
    return first;
  }

  /**
   * Adds what is kept as pieces: the whole ring, or each run of chunks.
   *
   * @param exact whether the walls themselves were asked what they need: only then a whole ring
   *     says what of it isn't needed, as nodes see nothing of thin rests at walls
   */
  public void addTo(List<Piece> pieces, boolean exact) {
    int n = keep.length;
    if (count == n) {
      boolean all = !exact || !ring.closed() || ring.index() != 0 || longest < IDLE_MM;
      pieces.add(Piece.of(ring, all ? null : needed));
      return;
    }
    int begin = ring.closed() ? lastGap() + 1 : 0;
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

  private int lastGap() {
    int last = keep.length - 1;
    while (keep[last]) {
      last--;
    }
    return last;
  }
}
