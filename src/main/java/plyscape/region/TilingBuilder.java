package plyscape.region;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.bands.Bands;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.planar.Chain;
import plyscape.planar.GridUnits;
import plyscape.planar.Linework;
import plyscape.planar.OutlineLayer;
import plyscape.planar.OutlineSimplifier;
import plyscape.planar.PlanarMap;
import plyscape.planar.PolygonAssembler;
import plyscape.terrain.Terrain;
import plyscape.zones.Zone;

/**
 * Makes the exact tiling of the carved area: contours and zones noded together on the 0.001 mm
 * grid, every face labelled by what winds around it, small and narrow parts given to neighbours,
 * outlines simplified where two regions share them. All geometry after the noding is picking
 * chains, so regions neither overlap nor leave gaps, and pockets nest.
 */
public final class TilingBuilder {

  /**
   * Chords of contours deviate at most this far from them, mm; with the shift that restores areas
   * at most 5/3 of it, the stated 0.05.
   */
  static final double CONTOUR_TOLERANCE_MM = 0.03;

  /**
   * The same for zones, mm. Less, as their chords aren't shifted: a round pond of 3 mm radius loses
   * half a percent.
   */
  static final double ZONE_TOLERANCE_MM = 0.01;

  /** After parts were given away, points this near to a line are left out of it, mm. */
  static final double CLEANING_MM = 0.003;

  private static final GeometryFactory MM = new GeometryFactory();

  private final Box carved;
  private final Bands bands;
  private final List<Zone> zones;
  private final MapOrigin origin;
  private final TilingRules rules;

  /** The map before anything was given away. */
  private MergedTally drawn;

  private TilingBuilder(Terrain terrain, Bands bands, List<Zone> zones, TilingRules rules) {
    this.rules = rules;
    this.carved = terrain.frame().panel();
    this.bands = bands;
    this.zones = zones;
    this.origin = new MapOrigin(bands, zones, rules.plyCount());
  }

  /** The tiling of the carved area; what was given to neighbours is warned of. */
  public static Tiling build(
      Terrain terrain, Bands bands, List<Zone> zones, TilingRules rules, Warnings warnings) {
    return new TilingBuilder(terrain, bands, zones, rules).build(terrain, warnings);
  }

  private Tiling build(Terrain terrain, Warnings warnings) {
    RegionMap map = simplified(mapped(terrain), ZONE_TOLERANCE_MM);
    map = SmallRegionMerger.merge(map, rules.minimumAreaMm2());
    map = ReachMerger.merge(map, rules.smallestToolMm(), rules.minimumAreaMm2());
    map = simplified(map, 0);
    StandingMerger cure = new StandingMerger(carved, rules);
    RegionMap finished = cure.merge(map);
    // Widened walls are wood that was gained, not map that was lost to a cutter's width.
    RegionMap counted = cure.widens() ? map : finished;
    CompletableFuture<List<Tiling.Merged>> counting =
        CompletableFuture.supplyAsync(() -> drawn.against(counted, cure.cuts()));
    Tiling tiling = tiling(carved, finished, List.of());
    List<Tiling.Merged> merged = counting.join();
    MergedWarnings.add(merged, zones, rules, warnings);
    return tiling.with(merged, cure.curedMm2());
  }

  /** Contours, zones and the box's edge as faces, and these as regions. */
  private RegionMap mapped(Terrain terrain) {
    int boxComponent = zones.size() + 1;
    Linework linework = new Linework(boxComponent + 1);
    ContourLattice lattice = ContourLattice.of(terrain.elevationM(), carved);
    // All breaks together, so that on steep ground one contour isn't straightened across the next.
    OutlineLayer contours = new OutlineLayer();
    ContourTracer.trace(lattice, carved, bands.breaksM()).forEach(contours::addAll);
    contours = OutlineSimplifier.layer(contours, CONTOUR_TOLERANCE_MM * GridUnits.PER_MM, true);
    for (OutlineLayer.Outline outline : contours.outlines()) {
      linework.add(outline.x(), outline.y(), 0, 1, true);
    }
    for (int z = 0; z < zones.size(); z++) {
      linework.addMm(zones.get(z).area(), z + 1);
    }
    int x0 = GridUnits.of(carved.minX());
    int y0 = GridUnits.of(carved.minY());
    int x1 = GridUnits.of(carved.maxX());
    int y1 = GridUnits.of(carved.maxY());
    linework.add(
        new int[] {x0, x1, x1, x0, x0}, new int[] {y0, y0, y1, y1, y0}, boxComponent, 1, true);
    return label(PlanarMap.of(linework), boxComponent);
  }

  private RegionMap label(PlanarMap map, int boxComponent) {
    int[] source = new int[map.faces()];
    int[] ply = new int[map.faces()];
    for (int f = 0; f < map.faces(); f++) {
      source[f] = -1;
      if (map.winding(f, boxComponent) > 0) {
        source[f] = origin.source(map, f);
        ply[f] = origin.ply(map, f, source[f]);
      }
    }
    drawn = new MergedTally(map, source, ply, rules.minimumAreaMm2(), origin);
    return RegionMap.of(map.chains(), ply);
  }

  static RegionMap simplified(RegionMap map, double mappedToleranceMm) {
    return simplified(map, mappedToleranceMm, 0);
  }

  /** The same, and contours by a tolerance of their own. */
  static RegionMap simplified(RegionMap map, double mappedToleranceMm, double terrainUnits) {
    OutlineLayer layer = new OutlineLayer();
    for (Chain chain : map.chains()) {
      layer.add(chain.x, chain.y, chain.x.length, chain.terrain);
    }
    OutlineLayer less =
        OutlineSimplifier.layer(layer, mappedToleranceMm * GridUnits.PER_MM, terrainUnits, false);
    List<Chain> chains = new ArrayList<>();
    for (int c = 0; c < map.chains().size(); c++) {
      Chain chain = map.chains().get(c);
      OutlineLayer.Outline outline = less.outlines().get(c);
      chains.add(new Chain(outline.x(), outline.y(), chain.terrain, chain.left(), chain.right()));
    }
    return map.with(chains);
  }

  /** The regions of a map as polygons, mm. */
  static Tiling tiling(Box carved, RegionMap map, List<Tiling.Merged> merged) {
    PolygonAssembler assembler =
        new PolygonAssembler(map.chains(), map.count(), GridUnits.PER_MM, MM);
    SortedMap<Integer, MultiPolygon> exposed = new TreeMap<>();
    SortedMap<Integer, MultiPolygon> pockets = new TreeMap<>();
    List<Region> regions = new ArrayList<>();
    for (int k = 1; k <= map.deepest(); k++) {
      int ply = k;
      List<PolygonAssembler.Part> shown = assembler.polygons(r -> map.ply(r) == ply);
      if (!shown.isEmpty()) {
        exposed.put(k, multi(shown));
        shown.forEach(part -> regions.add(new Region(ply, part.polygon())));
      }
      pockets.put(k, multi(assembler.polygons(r -> map.ply(r) >= ply)));
    }
    return new Tiling(carved, exposed, pockets, regions, merged, 0);
  }

  private static MultiPolygon multi(List<PolygonAssembler.Part> parts) {
    return MM.createMultiPolygon(
        parts.stream().map(PolygonAssembler.Part::polygon).toArray(Polygon[]::new));
  }
}
