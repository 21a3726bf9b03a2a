package plyscape.toolpath.order;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class TourShakeTest {

  private static final TravelCost COST = TravelCost.byLength(mm -> 0.3 + mm / 20);

  /** Rings and paths in places of five that wait for each other in turn, and a few far ones. */
  private static List<TourItem> places(Random random, int places) {
    List<TourItem> items = new ArrayList<>();
    for (int place = 0; place < places; place++) {
      double x = 100 * random.nextDouble();
      double y = 100 * random.nextDouble();
      for (int k = 0; k < 5; k++) {
        int[] after = k == 0 || random.nextInt(4) == 0 ? new int[0] : new int[] {items.size() - 1};
        double[] xs = {x + 4 * random.nextDouble(), x + 4 * random.nextDouble()};
        double[] ys = {y + 4 * random.nextDouble(), y + 4 * random.nextDouble()};
        TourItem.Kind kind = TourItem.Kind.values()[random.nextInt(3)];
        items.add(new TourItem(xs, ys, kind, after));
      }
    }
    return items;
  }

  private static Tour begun(List<TourItem> items) {
    Tour tour = new Tour(items, 0, 0, COST);
    NearestFirst.fill(tour, Tour.successors(items));
    TourWays.pick(tour);
    return tour;
  }

  private static void assertAllowed(Tour tour, String message) {
    int[] position = new int[tour.order.length];
    Arrays.fill(position, -1);
    for (int p = 0; p < position.length; p++) {
      position[tour.order[p]] = p;
    }
    for (int i = 0; i < position.length; i++) {
      assertTrue(position[i] >= 0, message + ": left out " + i);
      for (int before : tour.items.get(i).after()) {
        assertTrue(position[before] < position[i], message + ": " + before + " after " + i);
      }
    }
  }

  @Test
  void shakenTours_areAllowedAndShorterByWhatTheyTell() {
    double sum = 0;
    for (int seed = 0; seed < 20; seed++) {
      List<TourItem> items = places(new Random(seed), 25);
      Tour tour = begun(items);
      TourLinks links = new TourLinks(tour, Tour.successors(items));
      TourImprove improve = new TourImprove(links);
      double first = tour.total();
      double improved = improve.all();
      assertEquals(first - improved, tour.total(), 1e-6, "seed " + seed);
      double shaken = TourShake.run(links, improve, 400, seed);
      assertEquals(first - improved - shaken, tour.total(), 1e-6, "seed " + seed);
      assertTrue(shaken >= 0, "seed " + seed);
      assertAllowed(tour, "seed " + seed);
      sum += shaken / (first - improved);
    }
    assertTrue(sum / 20 > 0.01, "won " + sum / 20);
  }

  @Test
  void changesTakenBack_leaveTheTourAsItWas() {
    Random random = new Random(3);
    List<TourItem> items = places(random, 12);
    Tour tour = begun(items);
    TourLinks links = new TourLinks(tour, Tour.successors(items));
    int[] order = tour.order.clone();
    int[] way = tour.way.clone();
    double total = tour.total();
    links.mark();
    for (int change = 0; change < 50; change++) {
      int first = random.nextInt(40);
      int second = first + 1 + random.nextInt(9);
      if (change % 3 == 0) {
        links.reverse(first, second);
      } else {
        links.exchange(first, second, second + random.nextInt(10));
      }
    }
    links.back();
    assertArrayEquals(order, tour.order);
    assertArrayEquals(way, tour.way);
    assertEquals(total, tour.total(), 1e-12);
  }
}
