package plyscape.toolpath.slot;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Junctions so near to each other that they are one crossing, and the short lines between them: two
 * streets that cross at an angle have two junctions.
 */
final class SlotCrossings {

  private final int[] group;
  private final Map<Integer, List<int[]>> links = new HashMap<>();

  /**
   * @param places of all lines
   */
  SlotCrossings(int places) {
    group = new int[places];
    Arrays.setAll(group, a -> a);
  }

  /** Makes the junctions at both ends of a short line one. */
  void link(int[] line) {
    int[] back = new int[line.length];
    Arrays.setAll(back, k -> line[line.length - 1 - k]);
    links.computeIfAbsent(line[0], k -> new ArrayList<>()).add(line);
    links.computeIfAbsent(back[0], k -> new ArrayList<>()).add(back);
    group[of(line[0])] = of(back[0]);
  }

  /** The crossing that a place belongs to, as the number of one of its places. */
  int of(int place) {
    int root = place;
    while (group[root] != root) {
      root = group[root];
    }
    group[place] = root;
    return root;
  }

  /** The places from one junction of a crossing to another, over as few lines as can be. */
  int[] way(int from, int to) {
    Map<Integer, int[]> came = new HashMap<>();
    Deque<Integer> open = new ArrayDeque<>(List.of(from));
    came.put(from, new int[] {from});
    while (!open.isEmpty() && !came.containsKey(to)) {
      int at = open.poll();
      for (int[] line : links.getOrDefault(at, List.of())) {
        int end = line[line.length - 1];
        if (!came.containsKey(end)) {
          int[] way = came.get(at);
          int[] longer = Arrays.copyOf(way, way.length + line.length - 1);
          System.arraycopy(line, 1, longer, way.length, line.length - 1);
          came.put(end, longer);
          open.add(end);
        }
      }
    }
    return came.getOrDefault(to, new int[0]);
  }
}
