package plyscape.shop;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import plyscape.layup.Layup;
import plyscape.layup.Measured;
import plyscape.layup.Ply;
import plyscape.layup.Shelf;
import plyscape.layup.Veneer;
import plyscape.shop.Proposal.Place;
import plyscape.shop.Proposal.Role;
import plyscape.shop.SheetKinds.Kind;

/**
 * Gives the plies of an order of kinds their veneers: the terrain's in the order of the shelf,
 * zones' as wished.
 */
final class ProposalBuilder {

  private final Shelf shelf;
  private final SheetKinds sheets;
  private final HeightShares heights;
  private final Map<String, Integer> left = new HashMap<>();
  private final Set<String> names = new HashSet<>();

  ProposalBuilder(Shelf shelf, SheetKinds sheets, HeightShares heights) {
    this.shelf = shelf;
    this.sheets = sheets;
    this.heights = heights;
    shelf.veneers().forEach(v -> left.put(v.name(), v.count()));
  }

  Proposal build(
      int[] kindAt,
      boolean[] showsAt,
      boolean[] zoneAt,
      double[] ratioAt,
      double[] topMm,
      int unbalanced,
      int spare,
      double ratio,
      double fit) {
    int n = kindAt.length;
    Veneer[] veneers = new Veneer[n];
    Role[] roles = new Role[n];
    int[] terrain = new int[sheets.kinds.size()];
    int[] zone = new int[terrain.length];
    List<Double> mids = new ArrayList<>();
    for (int at = 0; at < n; at++) {
      Kind kind = sheets.kinds.get(kindAt[at]);
      roles[at] =
          at == n - 1
              ? Role.FLOOR
              : !showsAt[at] ? Role.SPARE : zoneAt[at] ? Role.ZONE : Role.TERRAIN;
      if (roles[at] == Role.ZONE) {
        veneers[at] = take(kind.forZones().get(zone[kindAt[at]]++));
      } else if (roles[at] == Role.TERRAIN) {
        veneers[at] = take(kind.forTerrain().get(terrain[kindAt[at]]++));
        mids.add(topMm[at] + kind.thicknessMm() / 2);
      }
    }
    for (int at = 0; at < n; at++) {
      veneers[at] =
          veneers[at] == null ? take(mostLeft(sheets.kinds.get(kindAt[at]))) : veneers[at];
    }
    double[] shares = heights.byScale(mids.stream().mapToDouble(Double::doubleValue).toArray());
    List<Ply> plies = new ArrayList<>();
    List<Place> places = new ArrayList<>();
    List<Integer> order = new ArrayList<>();
    int grounds = 0;
    for (int at = 0; at < n; at++) {
      boolean unique = roles[at] == Role.TERRAIN || roles[at] == Role.ZONE;
      Veneer v = veneers[at];
      String name = unique ? v.name() : "";
      plies.add(
          new Ply(
              at + 1, name, v.rgb(), v.thicknessMm(), v.toleranceMm(), 90 * (at % 2), v.wood()));
      names.add(name);
      double share = roles[at] == Role.TERRAIN ? shares[grounds++] : 0;
      if (unique) {
        order.add(shelf.veneers().indexOf(v));
      }
      places.add(
          new Place(roles[at], roles[at] == Role.ZONE ? zonesOf(v) : "", ratioAt[at], share));
    }
    for (int at = 0; at < n; at++) {
      if (plies.get(at).name().isEmpty()) {
        Ply p = plies.get(at);
        plies.set(
            at,
            new Ply(
                p.number(),
                freeName(veneers[at].name(), roles[at]),
                p.rgb(),
                p.thicknessMm(),
                p.toleranceMm(),
                p.grainDeg(),
                p.wood()));
      }
    }
    Layup layup =
        new Layup("", shelf.name(), plies, shelf.glueLine(), Measured.NOTHING, shelf.flatnessMm());
    return new Proposal(
        layup, List.copyOf(places), unbalanced, spare, ratio, fit, inversions(order));
  }

  private Veneer take(Veneer v) {
    left.merge(v.name(), -1, Integer::sum);
    return v;
  }

  private Veneer mostLeft(Kind kind) {
    Veneer most = kind.veneers().get(0);
    for (Veneer v : kind.veneers()) {
      most = left.get(v.name()) > left.get(most.name()) ? v : most;
    }
    return most;
  }

  private String zonesOf(Veneer v) {
    return String.join(
        ", ",
        shelf.wishes().stream()
            .filter(w -> w.veneer().equals(v.name()))
            .map(Shelf.Wish::zone)
            .toList());
  }

  private String freeName(String veneer, Role role) {
    String base = role == Role.FLOOR ? veneer + " (floor)" : veneer + " (spare)";
    String name = base;
    for (int i = 2; !names.add(name); i++) {
      name = base + " " + i;
    }
    return name;
  }

  private static int inversions(List<Integer> order) {
    int count = 0;
    for (int i = 0; i < order.size(); i++) {
      for (int j = i + 1; j < order.size(); j++) {
        count += order.get(i) > order.get(j) ? 1 : 0;
      }
    }
    return count;
  }
}
