package plyscape.toolpath.motion;

import java.util.List;
import plyscape.machine.Move;
import plyscape.toolpath.ring.Chunks;

/**
 * Lines along the chunks of a piece, each chunk at a feed of its own. A chunk's end is a place of
 * its own only where the feed changes or the piece ends.
 */
final class ChunkLines {

  private ChunkLines() {}

  /**
   * The lines, from the first chunk's start.
   *
   * @param shares of the feed, one a chunk
   * @param feed mm/min
   * @param depth of all of them, mm
   */
  static List<Move> of(Chunks chunks, double[] shares, double feed, double depth) {
    int first = chunks.start(0);
    MoveList lines = new MoveList(chunks.x(first), chunks.y(first), depth);
    for (int c = 0; c < chunks.count(); c++) {
      boolean changes = c + 1 < chunks.count() && shares[c + 1] != shares[c];
      for (int i = chunks.start(c) + 1; i <= chunks.start(c + 1); i++) {
        boolean end = i == chunks.start(c + 1) && (changes || c + 1 == chunks.count());
        if (end || chunks.own(i)) {
          lines.line(chunks.x(i), chunks.y(i), depth, feed * shares[c]);
        }
      }
    }
    return lines.moves();
  }
}
