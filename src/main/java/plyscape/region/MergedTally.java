package plyscape.region;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import plyscape.planar.Chain;
import plyscape.planar.GridUnits;
import plyscape.planar.Linework;
import plyscape.planar.PlanarMap;
import plyscape.planar.Sets;

/**
 * Adds up what was given to neighbours, by reason, source and plies: the map as drawn is laid over
 * the map as it came out, and every part that shows another ply counts. Why: a part belonged to a
 * region below the least area, or else was too narrow. Exact, but that slivers along lines which
 * were straightened don't count.
 */
final class MergedTally {

  static final String SMALL = "too small";
  static final String NARROW = "too narrow";
  static final String WEAK = "too weak";

  /** Parts of less mean width are what straightening moves, grid units: twice its tolerance. */
  private static final double SLIVER_UNITS = 2 * TilingBuilder.ZONE_TOLERANCE_MM * GridUnits.PER_MM;

  /** And parts of less area, mm2: corners that straightening cuts. */
  private static final double SPECK_MM2 = 0.003;

  private static final int DRAWN = 0;
  private static final int SHOWN = 1;

  private record Kind(String why, int source, int from, int to) {
    boolean same(Kind other) {
      return other != null
          && source == other.source
          && from == other.from
          && to == other.to
          && why.equals(other.why);
    }
  }

  private final MapOrigin origin;
  private final Linework drawn = new Linework(2);

  /** Source, ply and whether too small, of faces drawn; index 0 is the outside. */
  private final List<Kind> kinds = new ArrayList<>(List.of(new Kind("", -1, 0, 0)));

  /**
   * Keeps the map as drawn.
   *
   * @param source of each face, -1 outside
   * @param ply of each face, 0 outside
   */
  MergedTally(PlanarMap map, int[] source, int[] ply, double minimumAreaMm2, MapOrigin origin) {
    this.origin = origin;
    Sets regions = new Sets(ply.length);
    for (Chain chain : map.chains()) {
      if (ply[chain.left()] == ply[chain.right()]) {
        regions.join(chain.left(), chain.right());
      }
    }
    long[] area2 = RegionMap.areas2(map.chains(), ply.length);
    double[] regionMm2 = new double[ply.length];
    for (int f = 0; f < ply.length; f++) {
      regionMm2[regions.find(f)] += area2[f] / 2.0 / GridUnits.perMm2();
    }
    TreeMap<Kind, Integer> numbers = new TreeMap<>(order());
    int[] kind = new int[ply.length];
    for (int f = 0; f < ply.length; f++) {
      if (ply[f] > 0) {
        String why = regionMm2[regions.find(f)] < minimumAreaMm2 ? SMALL : NARROW;
        Kind own = new Kind(why, source[f], ply[f], 0);
        Integer number = numbers.get(own);
        if (number == null) {
          number = kinds.size();
          numbers.put(own, number);
          kinds.add(own);
        }
        kind[f] = number;
      }
    }
    for (Chain chain : map.chains()) {
      int across = kind[chain.left()] - kind[chain.right()];
      if (across != 0) {
        drawn.add(chain.x, chain.y, DRAWN, across, chain.terrain);
      }
    }
  }

  private static Comparator<Kind> order() {
    return Comparator.comparing(Kind::why)
        .thenComparingInt(Kind::source)
        .thenComparingInt(Kind::from)
        .thenComparingInt(Kind::to);
  }

  /**
   * What shows another ply in the finished map, one entry a kind, sorted; to be called once.
   *
   * @param weakCut whether weak standing wood was cut away: too narrow parts that went down then
   *     count as that
   */
  List<Tiling.Merged> against(RegionMap finished, boolean weakCut) {
    for (Chain chain : finished.chains()) {
      int across = finished.ply(chain.left()) - finished.ply(chain.right());
      drawn.add(chain.x, chain.y, SHOWN, across, chain.terrain);
    }
    PlanarMap both = PlanarMap.of(drawn);
    int faces = both.faces();
    Kind[] kind = new Kind[faces];
    for (int f = 0; f < faces; f++) {
      Kind was = kinds.get(both.winding(f, DRAWN));
      int ply = both.winding(f, SHOWN);
      if (was.from() > 0 && ply > 0 && was.from() != ply) {
        boolean weak = weakCut && was.why().equals(NARROW) && ply > was.from();
        String why = weak ? WEAK : was.why();
        kind[f] = new Kind(why, was.source(), was.from(), ply);
      }
    }
    Sets parts = new Sets(faces);
    for (Chain chain : both.chains()) {
      if (kind[chain.left()] != null && kind[chain.left()].same(kind[chain.right()])) {
        parts.join(chain.left(), chain.right());
      }
    }
    return sums(both, kind, parts);
  }

  private List<Tiling.Merged> sums(PlanarMap both, Kind[] kind, Sets parts) {
    long[] area2 = RegionMap.areas2(both.chains(), kind.length);
    double[] length = new double[kind.length];
    for (Chain chain : both.chains()) {
      int left = parts.find(chain.left());
      int right = parts.find(chain.right());
      if (left != right) {
        double own = chain.length();
        length[left] += own;
        length[right] += own;
      }
    }
    long[] partArea2 = new long[kind.length];
    for (int f = 0; f < kind.length; f++) {
      partArea2[parts.find(f)] += area2[f];
    }
    TreeMap<Kind, long[]> sums = new TreeMap<>(order());
    for (int f = 0; f < kind.length; f++) {
      if (kind[f] != null
          && parts.find(f) == f
          && partArea2[f] > SLIVER_UNITS * length[f]
          && partArea2[f] / 2.0 > SPECK_MM2 * GridUnits.perMm2()) {
        long[] sum = sums.computeIfAbsent(kind[f], k -> new long[2]);
        sum[0]++;
        sum[1] += partArea2[f];
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
