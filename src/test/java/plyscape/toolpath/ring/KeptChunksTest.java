package plyscape.toolpath.ring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.toolpath.lattice.Ring;

/** Stretches of a square ring of 12 mm, in chunks of 1 mm, by its plain lengths. */
class KeptChunksTest {

  private static List<Piece> kept(int index, int... chunks) {
    Ring ring = new Ring(index, true, new double[] {0, 3, 3, 0}, new double[] {0, 0, 3, 3});
    KeptChunks kept = new KeptChunks(ring, Chunks.of(ring, 1));
    for (int chunk : chunks) {
      kept.keep(chunk);
    }
    kept.closeGaps();
    List<Piece> pieces = new ArrayList<>();
    kept.addTo(pieces, true);
    return pieces;
  }

  @Test
  void aRingAlongAWallKnowsWhatIsNeededOfIt() {
    Piece whole = kept(0, 0, 1, 4).get(0);
    assertTrue(whole.closed());
    assertEquals(12, whole.lengthMm(), 1e-9);
    // From the first chunk to the end of the fifth; the 7 mm after it are the longest gap.
    assertEquals(5, whole.needed().lengthMm(), 1e-9);
    assertEquals(0, whole.needed().x()[0], 1e-9);
    assertEquals(0, whole.needed().y()[0], 1e-9);
    assertEquals(5, whole.reversed().needed().lengthMm(), 1e-9);
  }

  @Test
  void innerRingsAndShortGapsAreGoneRoundInFull() {
    assertNull(kept(2, 0, 1, 4).get(0).needed());
    assertNull(kept(0, 0, 1, 3, 4, 6, 7, 9, 10).get(0).needed());
  }
}
