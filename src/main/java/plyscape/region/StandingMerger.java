package plyscape.region;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.grid.Box;
import plyscape.planar.Chain;
import plyscape.planar.GridUnits;
import plyscape.planar.Linework;
import plyscape.planar.PlanarMap;
import plyscape.planar.Sets;
import plyscape.standing.StandingCheck;
import plyscape.standing.WeakPart;
import plyscape.standing.WoodOpening;

/**
 * Cures weak standing wood in a map of regions: gives it to the neighbour below until none is left,
 * or moves its walls out to the least width where the pocket beside can lose that. The map tiles as
 * exactly as before. What a cure can't help stays, and is found again by the check of the finished
 * tiling.
 */
final class StandingMerger {

  /** Giving a part away can leave another weak; each round takes away, so that few are needed. */
  private static final int ROUNDS = 12;

  /** Widened walls go so much farther than the least width, mm: more than rounding and chords. */
  private static final double OVER_MM = 0.015;

  /**
   * A pocket may lose this much more to the cutter's roundness by a widened wall beside it, mm2.
   */
  private static final double POCKET_LOSS_MM2 = 0.05;

  private final Box carved;
  private final StandingCure cure;
  private final double toolMm;
  private final double minimumAreaMm2;
  private double curedMm2;

  StandingMerger(Box carved, TilingRules rules) {
    this.carved = carved;
    cure = rules.standing();
    toolMm = rules.smallestToolMm();
    minimumAreaMm2 = rules.minimumAreaMm2();
  }

  /** Whether walls are moved out. */
  boolean widens() {
    return cure != null && cure.kind() == StandingCure.Kind.WIDEN;
  }

  /** Whether weak parts are given away. */
  boolean cuts() {
    return cure != null && cure.kind() == StandingCure.Kind.CUT;
  }

  /** The map after the cure. */
  RegionMap merge(RegionMap map) {
    if (cure == null) {
      return map;
    }
    return switch (cure.kind()) {
      case TELL -> map;
      case CUT -> cut(map);
      case WIDEN -> widened(map);
    };
  }

  /** Area that shows another ply by the cure, mm2. */
  double curedMm2() {
    return curedMm2;
  }

  private RegionMap cut(RegionMap map) {
    RegionMap out = map;
    for (int round = 0; round < ROUNDS; round++) {
      List<WeakPart> weak = weak(TilingBuilder.tiling(carved, out, List.of()));
      RegionMap next = weak.isEmpty() ? out : given(out, weak);
      if (next == out) {
        break;
      }
      out = next;
    }
    return out;
  }

  private List<WeakPart> weak(Tiling tiling) {
    return new StandingCheck(
            cure.panel(), tiling.exposed(), tiling.pockets(), cure.terraces(), cure.rule())
        .weak();
  }

  /** Weak parts given to the neighbour below with which they share the longest line. */
  private RegionMap given(RegionMap map, List<WeakPart> weak) {
    int deepest = map.deepest();
    PlanarMap faces = noded(map, weak, deepest);
    int[] ply = new int[faces.faces()];
    int[] level = new int[faces.faces()];
    for (int f = 0; f < ply.length; f++) {
      ply[f] = map.ply(faces.winding(f, 0));
      for (int k = deepest; k >= 1 && level[f] == 0; k--) {
        level[f] = ply[f] > 0 && ply[f] <= k && faces.winding(f, k) > 0 ? k : 0;
      }
    }
    Sets groups = new Sets(ply.length);
    for (Chain chain : faces.chains()) {
      if (level[chain.left()] > 0 && level[chain.left()] == level[chain.right()]) {
        groups.join(chain.left(), chain.right());
      }
    }
    return relabelled(map, faces, ply, level, shared(faces, groups, level, ply));
  }

  /** Lines between weak parts and the deeper plies beside them that aren't weak. */
  private static SharedLines shared(PlanarMap faces, Sets groups, int[] level, int[] ply) {
    SharedLines shared = new SharedLines(groups, ply.length, 1 + IntStream.of(ply).max().orElse(0));
    for (Chain chain : faces.chains()) {
      for (boolean left : new boolean[] {true, false}) {
        int inner = left ? chain.left() : chain.right();
        int outer = left ? chain.right() : chain.left();
        if (level[inner] > 0 && level[outer] == 0 && ply[outer] > level[inner]) {
          shared.add(inner, ply[outer], chain);
        }
      }
    }
    return shared;
  }

  private static PlanarMap noded(RegionMap map, List<WeakPart> weak, int deepest) {
    Linework lines = new Linework(deepest + 1);
    for (Chain chain : map.chains()) {
      lines.add(chain.x, chain.y, 0, chain.left() - chain.right(), chain.terrain);
    }
    weak.forEach(part -> lines.addMm(part.area(), part.ply()));
    return PlanarMap.of(lines);
  }

  private RegionMap relabelled(
      RegionMap map, PlanarMap faces, int[] ply, int[] level, SharedLines shared) {
    long[] area2 = RegionMap.areas2(faces.chains(), ply.length);
    int[] plyOf = ply.clone();
    boolean some = false;
    for (int f = 0; f < ply.length; f++) {
      int neighbour = level[f] > 0 ? shared.longest(f) : 0;
      if (neighbour > 0) {
        plyOf[f] = neighbour;
        curedMm2 += area2[f] / 2.0 / GridUnits.perMm2();
        some = true;
      }
    }
    return some ? cleaned(RegionMap.of(faces.chains(), plyOf)) : map;
  }

  private RegionMap cleaned(RegionMap map) {
    return SmallRegionMerger.merge(
        TilingBuilder.simplified(map, TilingBuilder.CLEANING_MM, 1), minimumAreaMm2);
  }

  private RegionMap widened(RegionMap map) {
    RegionMap out = map;
    Set<Coordinate> tried = new HashSet<>();
    for (int round = 0; round < 3; round++) {
      Tiling tiling = TilingBuilder.tiling(carved, out, List.of());
      List<WeakPart> walls = new ArrayList<>();
      for (WeakPart part : weak(tiling)) {
        if (part.widthMm() < cure.rule().leastWidthMm() && tried.add(part.at())) {
          WeakPart wider = wider(part);
          if (pocketCanLose(tiling.pockets(), wider)) {
            walls.add(wider);
          }
        }
      }
      if (walls.isEmpty()) {
        break;
      }
      out = raised(out, walls);
    }
    return out == map ? map : ReachMerger.merge(out, toolMm, minimumAreaMm2);
  }

  private WeakPart wider(WeakPart part) {
    double by = (cure.rule().leastWidthMm() - part.widthMm()) / 2 + OVER_MM;
    Geometry area = part.area().buffer(by, 12);
    return new WeakPart(part.ply(), (Polygon) area, part.at(), part.widthMm(), part.heightMm());
  }

  /** Whether the cutter still gets everywhere in the pocket beside a wider wall. */
  private boolean pocketCanLose(SortedMap<Integer, MultiPolygon> pockets, WeakPart wall) {
    MultiPolygon pocket = pockets.get(wall.ply() + 1);
    Envelope near = wall.area().getEnvelopeInternal();
    near.expandBy(2 * toolMm);
    Geometry before = pocket.intersection(pocket.getFactory().toGeometry(near));
    Geometry after = before.difference(wall.area());
    return WoodOpening.goneMm2(after, toolMm)
        <= WoodOpening.goneMm2(before, toolMm) + POCKET_LOSS_MM2;
  }

  /** What of deeper plies lies under wider walls shows the walls' ply. */
  private RegionMap raised(RegionMap map, List<WeakPart> walls) {
    int deepest = map.deepest();
    PlanarMap faces = noded(map, walls, deepest);
    long[] area2 = RegionMap.areas2(faces.chains(), faces.faces());
    int[] plyOf = new int[faces.faces()];
    for (int f = 0; f < plyOf.length; f++) {
      int ply = map.ply(faces.winding(f, 0));
      plyOf[f] = ply;
      for (int k = 1; k < ply && plyOf[f] == ply; k++) {
        plyOf[f] = faces.winding(f, k) > 0 ? k : ply;
      }
      curedMm2 += plyOf[f] == ply ? 0 : area2[f] / 2.0 / GridUnits.perMm2();
    }
    return cleaned(RegionMap.of(faces.chains(), plyOf));
  }
}
