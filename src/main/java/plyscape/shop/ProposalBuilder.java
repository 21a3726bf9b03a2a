package plyscape.shop;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
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

  /**
   * An order of kinds; arrays go by place from the top.
   *
   * @param kindAt index of the kind
   * @param showsAt whether the ply is seen
   * @param zoneAt whether a zone wants it
   * @param ratioAt clearance by need
   * @param topMm depth of its top edge
   */
  record Order(
      int[] kindAt, boolean[] showsAt, boolean[] zoneAt, double[] ratioAt, double[] topMm) {

    private Role role(int at) {
      if (at == kindAt.length - 1) {
        return Role.FLOOR;
      }
      return !showsAt[at] ? Role.SPARE : zoneAt[at] ? Role.ZONE : Role.TERRAIN;
    }

    private Role[] roles() {
      return IntStream.range(0, kindAt.length).mapToObj(this::role).toArray(Role[]::new);
    }
  }

  /** What an order is worth: see the like-named of a {@link Proposal}. */
  record Worth(int unbalanced, int spare, double ratio, double fit) {}

  Proposal build(Order order, Worth worth) {
    Role[] roles = order.roles();
    Veneer[] veneers = veneers(order, roles);
    Layup layup =
        new Layup(
            "",
            shelf.name(),
            plies(veneers, roles),
            shelf.glueLine(),
            Measured.NOTHING,
            shelf.flatnessMm());
    return new Proposal(
        layup,
        places(order, roles, veneers),
        worth.unbalanced(),
        worth.spare(),
        worth.ratio(),
        worth.fit(),
        inversions(veneers, roles));
  }

  /** Sheets that are seen as the shelf and the wishes have them, then what is left most of. */
  private Veneer[] veneers(Order order, Role[] roles) {
    Veneer[] veneers = new Veneer[roles.length];
    int[] terrain = new int[sheets.kinds.size()];
    int[] zone = new int[terrain.length];
    for (int at = 0; at < roles.length; at++) {
      int kind = order.kindAt[at];
      if (roles[at] == Role.ZONE) {
        veneers[at] = take(sheets.kinds.get(kind).forZones().get(zone[kind]++));
      } else if (roles[at] == Role.TERRAIN) {
        veneers[at] = take(sheets.kinds.get(kind).forTerrain().get(terrain[kind]++));
      }
    }
    for (int at = 0; at < roles.length; at++) {
      if (veneers[at] == null) {
        veneers[at] = take(mostLeft(sheets.kinds.get(order.kindAt[at])));
      }
    }
    return veneers;
  }

  /** Plies that are seen have their veneer's name, the others one that is free. */
  private List<Ply> plies(Veneer[] veneers, Role[] roles) {
    for (int at = 0; at < roles.length; at++) {
      if (roles[at].shows()) {
        names.add(veneers[at].name());
      }
    }
    List<Ply> plies = new ArrayList<>();
    for (int at = 0; at < roles.length; at++) {
      Veneer v = veneers[at];
      String name = roles[at].shows() ? v.name() : freeName(v.name(), roles[at]);
      plies.add(
          new Ply(
              at + 1, name, v.rgb(), v.thicknessMm(), v.toleranceMm(), 90 * (at % 2), v.wood()));
    }
    return plies;
  }

  private List<Place> places(Order order, Role[] roles, Veneer[] veneers) {
    double[] shares = shares(order, roles);
    List<Place> places = new ArrayList<>();
    int grounds = 0;
    for (int at = 0; at < roles.length; at++) {
      places.add(
          new Place(
              roles[at],
              roles[at] == Role.ZONE ? zonesOf(veneers[at]) : "",
              order.ratioAt[at],
              roles[at] == Role.TERRAIN ? shares[grounds++] : 0));
    }
    return List.copyOf(places);
  }

  /** Shares of the ground that the terrain's plies get, top to bottom. */
  private double[] shares(Order order, Role[] roles) {
    double[] mids =
        IntStream.range(0, roles.length)
            .filter(at -> roles[at] == Role.TERRAIN)
            .mapToDouble(
                at -> order.topMm[at] + sheets.kinds.get(order.kindAt[at]).thicknessMm() / 2)
            .toArray();
    return heights.byScale(mids);
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

  /** Pairs of plies that are seen in another order than on the shelf. */
  private int inversions(Veneer[] veneers, Role[] roles) {
    int[] order =
        IntStream.range(0, roles.length)
            .filter(at -> roles[at].shows())
            .map(at -> shelf.veneers().indexOf(veneers[at]))
            .toArray();
    int count = 0;
    for (int i = 0; i < order.length; i++) {
      for (int j = i + 1; j < order.length; j++) {
        count += order[i] > order[j] ? 1 : 0;
      }
    }
    return count;
  }
}
