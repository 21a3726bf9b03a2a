package plyscape.region;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import plyscape.planar.Chain;
import plyscape.planar.GridUnits;
import plyscape.planar.Sets;

/**
 * Gives every region smaller than a least area to the neighbour with which it shares the longest
 * line, the smallest first, until none is left that has a neighbour. Of equals the larger neighbour
 * wins, then the one numbered lower.
 */
final class SmallRegionMerger {

  private final RegionMap map;
  private final Sets sets;
  private final int[] ply;
  private final long[] area2;
  private final List<List<Integer>> lines = new ArrayList<>();

  private SmallRegionMerger(RegionMap map) {
    this.map = map;
    sets = new Sets(map.count());
    ply = new int[map.count()];
    area2 = new long[map.count()];
    for (int r = 0; r < map.count(); r++) {
      ply[r] = map.ply(r);
      area2[r] = map.area2(r);
      lines.add(new ArrayList<>());
    }
    for (int c = 0; c < map.chains().size(); c++) {
      lines.get(map.chains().get(c).left()).add(c);
      lines.get(map.chains().get(c).right()).add(c);
    }
  }

  /** The map without regions below the least area. */
  static RegionMap merge(RegionMap map, double minimumAreaMm2) {
    double least2 = 2 * minimumAreaMm2 * GridUnits.perMm2();
    return new SmallRegionMerger(map).run(least2);
  }

  private RegionMap run(double least2) {
    record Entry(long area2, int region) {}
    PriorityQueue<Entry> queue =
        new PriorityQueue<>(Comparator.comparingLong(Entry::area2).thenComparingInt(Entry::region));
    for (int r = 1; r < ply.length; r++) {
      if (area2[r] < least2) {
        queue.add(new Entry(area2[r], r));
      }
    }
    if (queue.isEmpty()) {
      return map;
    }
    while (!queue.isEmpty()) {
      Entry entry = queue.poll();
      int region = entry.region();
      if (sets.find(region) == region && area2[region] == entry.area2() && area2[region] < least2) {
        int united = give(region);
        if (united > 0 && area2[united] < least2) {
          queue.add(new Entry(area2[united], united));
        }
      }
    }
    int[] plyOf = new int[ply.length];
    for (int r = 0; r < ply.length; r++) {
      plyOf[r] = ply[sets.find(r)];
    }
    return RegionMap.of(map.chains(), plyOf);
  }

  /**
   * Gives a region away; returns the name of what it is part of then, or 0 when it has no
   * neighbour.
   */
  private int give(int region) {
    Map<Integer, Double> shared = new HashMap<>();
    for (int c : lines.get(region)) {
      Chain chain = map.chains().get(c);
      int left = sets.find(chain.left());
      int other = left == region ? sets.find(chain.right()) : left;
      if (other != region && other != 0) {
        shared.merge(other, chain.length(), Double::sum);
      }
    }
    int best = 0;
    for (Map.Entry<Integer, Double> entry : shared.entrySet()) {
      if (best == 0 || better(entry.getKey(), entry.getValue(), best, shared.get(best))) {
        best = entry.getKey();
      }
    }
    if (best == 0) {
      return 0;
    }
    int newPly = ply[best];
    int united = region;
    for (int other : shared.keySet().stream().sorted().toList()) {
      if (ply[other] == newPly) {
        united = unite(united, other);
      }
    }
    ply[united] = newPly;
    return united;
  }

  private boolean better(int a, double lengthA, int b, double lengthB) {
    if (lengthA != lengthB) {
      return lengthA > lengthB;
    }
    return area2[a] != area2[b] ? area2[a] > area2[b] : a < b;
  }

  private int unite(int a, int b) {
    int name = sets.join(a, b);
    int gone = name == a ? b : a;
    area2[name] += area2[gone];
    boolean swap = lines.get(gone).size() > lines.get(name).size();
    List<Integer> more = swap ? lines.get(gone) : lines.get(name);
    more.addAll(swap ? lines.get(name) : lines.get(gone));
    lines.set(name, more);
    lines.set(gone, new ArrayList<>());
    return name;
  }
}
