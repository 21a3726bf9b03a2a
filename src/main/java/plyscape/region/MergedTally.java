package plyscape.region;

import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import plyscape.planar.GridUnits;

/** Adds up what was given to neighbours, by reason, source and plies. */
final class MergedTally {

  private record Kind(String why, int source, int from, int to) {}

  private MergedTally() {}

  /** One entry a kind, sorted; pieces that came back to their own ply in the end aren't in it. */
  static List<Tiling.Merged> of(RegionMap map, MapOrigin origin) {
    TreeMap<Kind, long[]> sums =
        new TreeMap<>(
            Comparator.comparing(Kind::why)
                .thenComparingInt(Kind::source)
                .thenComparingInt(Kind::from)
                .thenComparingInt(Kind::to));
    for (int r = 1; r < map.count(); r++) {
      for (Piece piece : map.pieces(r)) {
        if (piece.why() != null && piece.ply() != map.ply(r)) {
          long[] sum =
              sums.computeIfAbsent(
                  new Kind(piece.why(), piece.source(), piece.ply(), map.ply(r)), k -> new long[2]);
          sum[0]++;
          sum[1] += piece.area2();
        }
      }
    }
    return sums.entrySet().stream()
        .map(
            e ->
                new Tiling.Merged(
                    e.getKey().why(),
                    origin.name(e.getKey().source()),
                    e.getKey().from(),
                    e.getKey().to(),
                    (int) e.getValue()[0],
                    e.getValue()[1] / 2.0 / GridUnits.perMm2()))
        .toList();
  }
}
