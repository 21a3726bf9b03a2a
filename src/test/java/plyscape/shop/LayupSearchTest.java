package plyscape.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import plyscape.layup.CutAllowance;
import plyscape.layup.DepthModel;
import plyscape.layup.Depths;
import plyscape.layup.GlueLine;
import plyscape.layup.Layup;
import plyscape.layup.Measured;
import plyscape.layup.Method;
import plyscape.layup.Ply;
import plyscape.layup.PlyDepth;
import plyscape.layup.Sanding;
import plyscape.layup.Shelf;
import plyscape.layup.Top;
import plyscape.layup.Veneer;
import plyscape.layup.advice.BalanceCheck;

class LayupSearchTest {

  private static final CutAllowance ALLOWANCE =
      new CutAllowance(0.1, Method.RSS, 0.03, new Sanding(0.1, 0.05), Top.LEAVE, 0.5);
  private static final HeightShares EVEN =
      new HeightShares(new Random(1).doubles(2000, 100, 200).toArray());

  private static Veneer veneer(String name, double thickness, String wood, int count) {
    return new Veneer(name, 0x808080, thickness, 0.04, wood, count);
  }

  private static Shelf shelf(List<Shelf.Wish> wishes, Veneer... veneers) {
    return new Shelf("test", null, new GlueLine(0.04, 0.01), 0.08, List.of(veneers), wishes);
  }

  @Test
  void evenness_closedForms() {
    assertEquals(1, HeightShares.evenness(new double[] {0.25, 0.25, 0.25, 0.25}), 1e-12);
    assertEquals(0.25, HeightShares.evenness(new double[] {1, 0, 0, 0}), 1e-12);
    // Heights 0..9 in tenths; mids 0, 1, 2: breaks at depth 0.5 and 1.5, that is at 3/4 and 1/4 of
    // 9.
    HeightShares h = new HeightShares(new double[] {0, 1, 2, 3, 4, 5, 6, 7, 8, 9});
    double[] s = h.byScale(new double[] {0, 1, 2});
    assertEquals(0.3, s[0], 1e-12); // 7, 8, 9 are at or above 6.75
    assertEquals(0.4, s[1], 1e-12); // 3 to 6
    assertEquals(0.3, s[2], 1e-12);
  }

  @Test
  void oneKind_allColoursShow_inTheShelfsOrder() {
    Shelf shelf =
        shelf(
            List.of(),
            veneer("a", 0.9, "poplar", 1),
            veneer("b", 0.9, "poplar", 1),
            veneer("c", 0.9, "poplar", 1),
            veneer("d", 0.9, "poplar", 2));
    LayupSearch.Outcome o = LayupSearch.of(shelf, 5, ALLOWANCE, EVEN, 3, true);
    Proposal p = o.proposals().get(0);
    assertTrue(o.proven());
    assertEquals(
        List.of("a", "b", "c", "d", "d (floor)"),
        p.layup().plies().stream().map(Ply::name).toList());
    assertEquals(0, p.unbalanced() + p.spare() + p.inversions());
    assertEquals(0, BalanceCheck.of(p.layup()).size());
  }

  @Test
  void zoneGetsItsVeneer_andTheTerrainLeavesItAlone() {
    Shelf shelf =
        shelf(
            List.of(new Shelf.Wish("river", "b")),
            veneer("a", 0.9, "poplar", 2),
            veneer("b", 0.9, "poplar", 2),
            veneer("c", 0.9, "poplar", 2));
    Proposal p = LayupSearch.of(shelf, 5, ALLOWANCE, EVEN, 1, false).proposals().get(0);
    long zone = p.places().stream().filter(x -> x.role() == Proposal.Role.ZONE).count();
    long spare = p.places().stream().filter(x -> x.role() == Proposal.Role.SPARE).count();
    assertEquals(1, zone);
    assertEquals(1, spare);
    int at =
        p.places()
            .indexOf(
                p.places().stream()
                    .filter(x -> x.role() == Proposal.Role.ZONE)
                    .findFirst()
                    .orElseThrow());
    assertEquals("b", p.layup().plies().get(at).name());
    assertEquals("river", p.places().get(at).zone());
  }

  @Test
  void nothingReliable_nearestIsNamed() {
    Shelf shelf =
        shelf(
            List.of(),
            veneer("a", 0.2, "poplar", 3),
            veneer("b", 0.2, "poplar", 3),
            veneer("c", 0.2, "oak", 3));
    LayupSearch.Outcome o = LayupSearch.of(shelf, 5, ALLOWANCE, EVEN, 3, false);
    assertTrue(o.proposals().isEmpty() && o.proven());
    assertNotNull(o.nearest());
    assertTrue(o.nearest().worstRatio() < 1);
  }

  @Test
  void floorTooThin_isTheReason() {
    CutAllowance thick =
        new CutAllowance(0.1, Method.RSS, 0.03, new Sanding(0.1, 0.05), Top.LEAVE, 3);
    Shelf shelf =
        shelf(
            List.of(),
            veneer("a", 0.9, "poplar", 3),
            veneer("b", 0.9, "poplar", 3),
            veneer("c", 0.9, "poplar", 3));
    LayupSearch.Outcome o = LayupSearch.of(shelf, 3, thick, EVEN, 3, false);
    assertTrue(o.proposals().isEmpty());
    assertEquals(0.45 + 0.1 + 0.04 + 0.9, o.bestFloorMm(), 1e-9);
  }

  /** Against all orders of all sheets, looked at one by one with the depth model itself. */
  @Test
  void best_againstExhaustiveSearch_onRandomShelves() {
    for (int seed = 1; seed <= 20; seed++) {
      Random random = new Random(seed);
      double[] thicknesses = {0.5, 0.6, 0.9};
      String[] woods = {"poplar", "oak"};
      List<Veneer> veneers = new ArrayList<>();
      for (int i = 0; i < 4; i++) {
        veneers.add(
            veneer(
                "v" + i,
                thicknesses[random.nextInt(3)],
                woods[random.nextInt(2)],
                1 + random.nextInt(2)));
      }
      List<Shelf.Wish> wishes =
          random.nextBoolean()
              ? List.of()
              : List.of(new Shelf.Wish("river", "v" + random.nextInt(4)));
      Shelf shelf = shelf(wishes, veneers.toArray(new Veneer[0]));
      double[] z = random.doubles(300, 0, 100).map(x -> x * x).toArray();
      HeightShares heights = new HeightShares(z);
      CutAllowance a =
          new CutAllowance(
              0.1,
              random.nextBoolean() ? Method.RSS : Method.WORST,
              0.03,
              new Sanding(0.1, 0.05),
              Top.LEAVE,
              0.7);
      int sheets = veneers.stream().mapToInt(Veneer::count).sum();
      if (sheets < 5) {
        continue;
      }
      List<Proposal> found = LayupSearch.of(shelf, 5, a, heights, 1, false).proposals();
      double[] brute = bruteForce(shelf, 5, a, heights);
      String what = "seed " + seed;
      if (brute == null) {
        assertTrue(found.isEmpty(), what);
        continue;
      }
      Proposal p = found.get(0);
      assertEquals(brute[0], p.unbalanced(), what);
      assertEquals(brute[1], p.spare(), what);
      assertEquals(brute[2], Math.min(p.worstRatio(), Proposal.ENOUGH), 1e-9, what);
      assertEquals(brute[3], p.fit(), 1e-9, what);
      check(p, a, what);
    }
  }

  private static void check(Proposal p, CutAllowance a, String what) {
    double worst = Double.POSITIVE_INFINITY;
    for (PlyDepth d : DepthModel.depths(p.layup(), a, false)) {
      Proposal.Role role = p.places().get(d.ply().number() - 1).role();
      if (role == Proposal.Role.TERRAIN || role == Proposal.Role.ZONE) {
        assertTrue(d.reliable(), what);
        worst = Math.min(worst, d.availableMm() / d.neededMm());
      }
    }
    assertEquals(worst, p.worstRatio(), 1e-9, what);
    assertEquals(BalanceCheck.unbalancedPairs(p.layup().plies()), p.unbalanced(), what);
  }

  /**
   * {unbalanced, spare, ratio up to 2, fit} of the best, by trying every sheet in every place; null
   * when nothing fits.
   */
  private static double[] bruteForce(Shelf shelf, int plies, CutAllowance a, HeightShares heights) {
    List<double[]> all = new ArrayList<>();
    order(shelf, plies, new ArrayList<>(), new HashMap<>(), a, heights, all);
    return all.stream()
        .min(
            (x, y) -> {
              for (int i = 0; i < 4; i++) {
                int c =
                    i < 2
                        ? Double.compare(x[i], y[i])
                        : Math.abs(x[i] - y[i]) < 1e-9 ? 0 : Double.compare(y[i], x[i]);
                if (c != 0) {
                  return c;
                }
              }
              return 0;
            })
        .orElse(null);
  }

  private static void order(
      Shelf shelf,
      int plies,
      List<Veneer> so,
      Map<Veneer, Integer> taken,
      CutAllowance a,
      HeightShares heights,
      List<double[]> all) {
    if (so.size() == plies) {
      score(shelf, so, a, heights, all);
      return;
    }
    for (Veneer v : shelf.veneers()) {
      int count = taken.getOrDefault(v, 0);
      if (count < v.count()) {
        taken.put(v, count + 1);
        so.add(v);
        order(shelf, plies, so, taken, a, heights, all);
        so.remove(so.size() - 1);
        taken.put(v, count);
      }
    }
  }

  private static void score(
      Shelf shelf, List<Veneer> so, CutAllowance a, HeightShares heights, List<double[]> all) {
    List<Ply> plies = new ArrayList<>();
    for (Veneer v : so) {
      plies.add(
          new Ply(
              plies.size() + 1,
              v.name(),
              0,
              v.thicknessMm(),
              v.toleranceMm(),
              90 * (plies.size() % 2),
              v.wood()));
    }
    Depths depths =
        DepthModel.depths(
            new Layup("", "", plies, new GlueLine(0.04, 0.01), Measured.NOTHING, 0.08), a, false);
    for (int hidden = 0; hidden < 1 << (so.size() - 1); hidden++) {
      score(shelf, so, hidden, depths, a, heights, all);
    }
  }

  private static void score(
      Shelf shelf,
      List<Veneer> so,
      int hidden,
      Depths depths,
      CutAllowance a,
      HeightShares heights,
      List<double[]> all) {
    Set<String> wishes = new HashSet<>();
    shelf.wishes().forEach(w -> wishes.add(w.veneer()));
    Set<String> seen = new HashSet<>();
    List<Double> mids = new ArrayList<>();
    double ratio = Double.POSITIVE_INFINITY;
    int deepest = 0;
    for (int i = 0; i < so.size() - 1; i++) {
      if ((hidden >> i & 1) == 1) {
        continue;
      }
      if (!seen.add(so.get(i).name())) {
        return;
      }
      ratio = Math.min(ratio, depths.of(i + 1).availableMm() / depths.of(i + 1).neededMm());
      deepest = i + 1;
      if (!wishes.contains(so.get(i).name())) {
        mids.add(depths.of(i + 1).midMm());
      }
    }
    if (!seen.containsAll(wishes) || mids.size() < 2 || ratio < 1 - 1e-9) {
      return;
    }
    if (depths.floorMm(deepest) < a.minimumFloorMm() - 1e-9) {
      return;
    }
    double fit =
        HeightShares.evenness(
            heights.byScale(mids.stream().mapToDouble(Double::doubleValue).toArray()));
    List<Ply> plies = depths.stream().map(PlyDepth::ply).toList();
    all.add(
        new double[] {
          BalanceCheck.unbalancedPairs(plies),
          Integer.bitCount(hidden),
          Math.min(ratio, Proposal.ENOUGH),
          fit
        });
  }
}
