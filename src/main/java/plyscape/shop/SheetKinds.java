package plyscape.shop;

import java.util.ArrayList;
import java.util.List;
import plyscape.layup.Shelf;
import plyscape.layup.Veneer;
import plyscape.layup.Wood;
import plyscape.layup.advice.BalanceCheck;

/**
 * Veneers put together that only differ in name and colour: clearance, balance and fit of a layup
 * depend on nothing but the order of these kinds. Immutable.
 */
final class SheetKinds {

  /** One kind. */
  record Kind(
      double thicknessMm,
      double toleranceMm,
      String wood,
      List<Veneer> veneers,
      int sheets,
      List<Shelf.Wish> wishes) {

    /** Colours that the terrain may show. */
    List<Veneer> forTerrain() {
      return veneers.stream()
          .filter(v -> v.count() > 0 && wishes.stream().noneMatch(w -> w.veneer().equals(v.name())))
          .toList();
    }

    /** Colours that zones want, each once, in the order of the wishes. */
    List<Veneer> forZones() {
      return wishes.stream()
          .map(Shelf.Wish::veneer)
          .distinct()
          .map(
              name -> veneers.stream().filter(v -> v.name().equals(name)).findFirst().orElseThrow())
          .toList();
    }

    /** Colours that can show at all. */
    int colours() {
      return (int) veneers.stream().filter(v -> v.count() > 0).count();
    }
  }

  final List<Kind> kinds;
  private final boolean[][] alike;

  SheetKinds(Shelf shelf) {
    List<List<Veneer>> groups = new ArrayList<>();
    for (Veneer v : shelf.veneers()) {
      List<Veneer> group = groups.stream().filter(g -> same(g.get(0), v)).findFirst().orElse(null);
      if (group == null) {
        group = new ArrayList<>();
        groups.add(group);
      }
      group.add(v);
    }
    kinds = groups.stream().map(g -> kind(g, shelf)).toList();
    alike = new boolean[kinds.size()][kinds.size()];
    for (int a = 0; a < kinds.size(); a++) {
      for (int b = 0; b < kinds.size(); b++) {
        alike[a][b] =
            Math.abs(kinds.get(a).thicknessMm() - kinds.get(b).thicknessMm())
                    <= BalanceCheck.THICKNESS_SLACK_MM + 1e-9
                && Wood.alike(kinds.get(a).wood(), kinds.get(b).wood());
      }
    }
  }

  /** Whether two kinds balance each other. */
  boolean alike(int a, int b) {
    return alike[a][b];
  }

  private static boolean same(Veneer a, Veneer b) {
    return a.thicknessMm() == b.thicknessMm()
        && a.toleranceMm() == b.toleranceMm()
        && Wood.alike(a.wood(), b.wood());
  }

  private static Kind kind(List<Veneer> group, Shelf shelf) {
    Veneer first = group.get(0);
    List<Shelf.Wish> wishes =
        shelf.wishes().stream()
            .filter(w -> group.stream().anyMatch(v -> v.name().equals(w.veneer())))
            .toList();
    return new Kind(
        first.thicknessMm(),
        first.toleranceMm(),
        first.wood(),
        List.copyOf(group),
        group.stream().mapToInt(Veneer::count).sum(),
        wishes);
  }
}
