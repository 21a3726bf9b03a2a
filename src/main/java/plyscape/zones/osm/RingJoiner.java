package plyscape.zones.osm;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Joins the member ways of a relation at their end nodes into closed rings, whatever their order
 * and direction. Where more than two ways meet, a ring ends as soon as it comes back to a node
 * where it has been, so that no ring touches itself at the end of a way. Time grows with the number
 * of ways.
 */
final class RingJoiner {

  /**
   * A closed ring.
   *
   * @param nodes ids, the last the first
   * @param ways numbers of the ways that it is made of
   */
  record Ring(long[] nodes, List<Integer> ways) {}

  /** One way on the path that is being walked. */
  private record Leg(int way, long from) {}

  private final List<long[]> ways;
  private final boolean[] used;
  private final Map<Long, Deque<Integer>> ends = new HashMap<>();
  private final List<Ring> rings = new ArrayList<>();
  private int open;

  private RingJoiner(List<long[]> ways) {
    this.ways = ways;
    this.used = new boolean[ways.size()];
  }

  /**
   * Joins ways.
   *
   * @param ways ids of their nodes, at least two each
   */
  static RingJoiner of(List<long[]> ways) {
    RingJoiner joiner = new RingJoiner(ways);
    joiner.join();
    return joiner;
  }

  /** The rings, each of three nodes or more. */
  List<Ring> rings() {
    return rings;
  }

  /** How many ways are part of no ring. */
  int open() {
    return open;
  }

  private void join() {
    for (int i = 0; i < ways.size(); i++) {
      long[] way = ways.get(i);
      if (way[0] == way[way.length - 1]) {
        used[i] = true;
        add(way, List.of(i));
      } else {
        ends.computeIfAbsent(way[0], node -> new ArrayDeque<>()).add(i);
        ends.computeIfAbsent(way[way.length - 1], node -> new ArrayDeque<>()).add(i);
      }
    }
    for (int i = 0; i < ways.size(); i++) {
      if (!used[i]) {
        walk(ways.get(i)[0]);
      }
    }
  }

  /** Walks on from a node while there are ways, closing rings and leaving dead ends behind. */
  private void walk(long start) {
    List<Leg> path = new ArrayList<>();
    Map<Long, Integer> been = new HashMap<>();
    long at = start;
    been.put(at, 0);
    while (true) {
      Integer way = take(at);
      if (way == null) {
        if (path.isEmpty()) {
          return;
        }
        been.remove(at);
        at = path.remove(path.size() - 1).from();
        open++;
        continue;
      }
      path.add(new Leg(way, at));
      at = other(ways.get(way), at);
      Integer begun = been.get(at);
      if (begun == null) {
        been.put(at, path.size());
      } else {
        List<Leg> loop = path.subList(begun, path.size());
        close(loop);
        loop.subList(1, loop.size()).forEach(leg -> been.remove(leg.from()));
        loop.clear();
      }
    }
  }

  /** An unused way at a node, which is used from now on; null when there is none. */
  private Integer take(long node) {
    Deque<Integer> there = ends.get(node);
    while (!there.isEmpty()) {
      int way = there.poll();
      if (!used[way]) {
        used[way] = true;
        return way;
      }
    }
    return null;
  }

  private static long other(long[] way, long end) {
    return way[0] == end ? way[way.length - 1] : way[0];
  }

  private void close(List<Leg> loop) {
    long[] nodes =
        new long[loop.stream().mapToInt(leg -> ways.get(leg.way()).length - 1).sum() + 1];
    int n = 0;
    for (Leg leg : loop) {
      long[] way = ways.get(leg.way());
      boolean forward = way[0] == leg.from();
      for (int i = 0; i < way.length - 1; i++) {
        nodes[n++] = way[forward ? i : way.length - 1 - i];
      }
    }
    nodes[n] = nodes[0];
    add(nodes, loop.stream().map(Leg::way).toList());
  }

  private void add(long[] nodes, List<Integer> of) {
    if (Arrays.stream(nodes).distinct().count() >= 3) {
      rings.add(new Ring(nodes, of));
    } else {
      open += of.size();
    }
  }
}
