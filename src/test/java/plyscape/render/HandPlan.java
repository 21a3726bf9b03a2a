package plyscape.render;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import plyscape.bands.Bands;
import plyscape.bend.PanelShape;
import plyscape.fault.Warning;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.Grid;
import plyscape.grid.GroundFrame;
import plyscape.job.Additions;
import plyscape.job.Bench;
import plyscape.job.Job;
import plyscape.job.JobOrigin;
import plyscape.job.RegionSpec;
import plyscape.job.StandingSpec;
import plyscape.job.SurfaceSpec;
import plyscape.job.TerrainOptions;
import plyscape.job.TerrainSpec;
import plyscape.job.ZoneSpec;
import plyscape.job.ZoneSpecs;
import plyscape.layup.CutAllowance;
import plyscape.layup.DepthModel;
import plyscape.layup.GlueLine;
import plyscape.layup.Layup;
import plyscape.layup.Measured;
import plyscape.layup.Method;
import plyscape.layup.Ply;
import plyscape.layup.Sanding;
import plyscape.layup.Top;
import plyscape.machine.CuttingData;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;
import plyscape.plan.Landscape;
import plyscape.plan.MapData;
import plyscape.plan.MotionSpan;
import plyscape.plan.PanelPlan;
import plyscape.plan.PathFigures;
import plyscape.plan.PlanTime;
import plyscape.plan.Standing;
import plyscape.plan.ToolProgram;
import plyscape.region.Region;
import plyscape.region.Tiling;
import plyscape.simulate.Verification;
import plyscape.terrain.RasterSource;
import plyscape.terrain.Terrain;
import plyscape.terrain.VoidCells;
import plyscape.zones.Zone;

/**
 * A finished plan put together by hand, of five plies of 1 mm without glue (mid-ply depths 0.5, 1.5
 * ...): on a panel of 100 x 80 with a border of 5 a square of ply 2 from (20, 20) to (60, 60) with
 * a hole of ply 1 from (30, 30) to (50, 50), in it an island of ply 3 from (36, 36) to (44, 44),
 * and a bar of ply 4 from (70, 10) to (90, 70). All the rest is ply 1.
 */
public final class HandPlan {

  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final PrecisionModel GRID = new PrecisionModel(1000);

  private HandPlan() {}

  /** The plan that the class describes. */
  public static PanelPlan make() {
    return make("meadow");
  }

  /** Its regions. */
  public static Landscape landscape() {
    return landscape("meadow");
  }

  /** The regions with another name for ply 1, for escaping. */
  public static Landscape landscape(String firstName) {
    return make(firstName).landscape();
  }

  /** The same with another name for ply 1, for escaping. */
  public static PanelPlan make(String firstName) {
    List<Ply> plies =
        List.of(
            new Ply(1, firstName, 0x9cc45f, 1, 0.03, 0, "poplar"),
            new Ply(2, "barley", 0xe3bd58, 1, 0.03, 90, "poplar"),
            new Ply(3, "brick", 0xb4553a, 1, 0.03, 0, "poplar"),
            new Ply(4, "deep blue", 0x1f4e79, 1, 0.03, 90, "poplar"),
            new Ply(5, "backing", 0xd9c7a5, 1, 0.03, 0, ""));
    Layup layup =
        new Layup(
            "layup.yaml", "Hand-made & small", plies, new GlueLine(0, 0), Measured.NOTHING, 0.05);
    CutAllowance allowance =
        new CutAllowance(0.1, Method.RSS, 0.03, new Sanding(0.1, 0.05), Top.LEAVE, 1);
    Box carved = new Box(5, 5, 95, 75);
    Geometry hole = box(30, 30, 50, 50);
    Geometry island = box(36, 36, 44, 44);
    Geometry ring = box(20, 20, 60, 60).difference(hole);
    Geometry bar = box(70, 10, 90, 70);
    SortedMap<Integer, MultiPolygon> exposed = new TreeMap<>();
    exposed.put(
        1,
        multi(
            box(5, 5, 95, 75)
                .difference(box(20, 20, 60, 60))
                .difference(bar)
                .union(hole.difference(island))));
    exposed.put(2, multi(ring));
    exposed.put(3, multi(island));
    exposed.put(4, multi(bar));
    Tool tool = Workshop.END_MILL_3;
    Tool spare = Workshop.endMill(1, 5).with(new CuttingData(18_000, 900, 200, 0.5, 0.4));
    ZoneSpec spec =
        ZoneSpecs.of(
            "river", Path.of("zones.geojson"), new TreeMap<>(), 4, null, ZoneSpecs.ground(12.0));
    Job job =
        new Job(
            "hand",
            layup.name(),
            layup,
            new TerrainSpec(
                Path.of("ground.asc"),
                null,
                "",
                List.of(1, 2, 3),
                TerrainSpec.NamedBands.SCALE,
                0.4,
                TerrainOptions.PLAIN),
            new Job.PanelSpec(100, 80, 5),
            List.of(spec),
            new Bench(List.of(tool, spare), Workshop.ROUTER, allowance),
            new RegionSpec(1, SurfaceSpec.FLAT, StandingSpec.USUAL),
            Additions.NONE,
            JobOrigin.NONE);
    Zone zone =
        new Zone(spec, bar, 1, List.of(new Zone.Skipped("spring <1>", "a point has no width")));
    Landscape landscape =
        new Landscape(
            job,
            DepthModel.depths(layup, allowance, false),
            new MapData(
                terrain(carved), new Bands(List.of(1, 2, 3), List.of(160.0, 120.0)), List.of(zone)),
            tiling(
                carved, exposed, List.of(new Tiling.Merged("too small", "river", 4, 1, 2, 0.75))),
            Optional.empty(),
            PanelShape.FLAT,
            new Standing(List.of(), 0),
            List.of(new Warning("thin-ply", "the ply \"brick\" is thin", "ply 3")));
    return new PanelPlan(
        landscape,
        List.of(
            new ToolProgram(
                "01-end-mill-3.nc",
                tool,
                "M30\n",
                List.of(
                    new ToolProgram.PassSummary(2, 1.4, 0, 500.5, 60, 2, 29.5, 1.75),
                    new ToolProgram.PassSummary(4, 3.4, 1.4, 400, 50, 2, 30.5, 3),
                    new ToolProgram.PassSummary(4, 3.4, 1.4, 300, 30, 1, 20, 2)),
                new PathFigures(
                    "01-end-mill-3.nc",
                    new PathFigures.Way(0, 0),
                    new PathFigures.Size(4, 4),
                    new PathFigures.Width(0, 0, PathFigures.Stretch.NONE)),
                new MotionSpan(0, 0, 88.5, 68.5, -4, 3.4),
                new MotionSpan(21.5, 11.5, 88.5, 68.5, -4, 3.4))),
        new PlanTime(80, 6.75, 86.75, 40.5),
        new Verification(0.1, 0.9987, 0, 0, 0.5, 1.25, List.of(), List.of()),
        List.of(),
        List.of(),
        List.of());
  }

  /** A tiling from exposed parts: pockets and regions follow. */
  public static Tiling tiling(
      Box carved, SortedMap<Integer, MultiPolygon> exposed, List<Tiling.Merged> merged) {
    SortedMap<Integer, MultiPolygon> pockets = new TreeMap<>();
    Geometry deeper = FACTORY.createMultiPolygon();
    for (int k = exposed.lastKey(); k >= 1; k--) {
      if (exposed.containsKey(k)) {
        deeper = OverlayNG.overlay(deeper, exposed.get(k), OverlayNG.UNION, GRID);
      }
      pockets.put(k, multi(deeper));
    }
    List<Region> regions = new ArrayList<>();
    exposed.forEach(
        (ply, area) -> {
          for (int i = 0; i < area.getNumGeometries(); i++) {
            regions.add(new Region(ply, (Polygon) area.getGeometryN(i)));
          }
        });
    return new Tiling(carved, exposed, pockets, regions, merged, 0);
  }

  /** Paints areas over one another, the later on top; vertices on the grid of 0.001 mm. */
  public static SortedMap<Integer, MultiPolygon> paint(
      Box carved, List<Integer> plies, List<Geometry> areas) {
    Geometry free = box(carved.minX(), carved.minY(), carved.maxX(), carved.maxY());
    SortedMap<Integer, MultiPolygon> exposed = new TreeMap<>();
    for (int i = areas.size() - 1; i >= 0; i--) {
      Geometry shown = OverlayNG.overlay(free, areas.get(i), OverlayNG.INTERSECTION, GRID);
      free = OverlayNG.overlay(free, areas.get(i), OverlayNG.DIFFERENCE, GRID);
      Geometry before = exposed.getOrDefault(plies.get(i), FACTORY.createMultiPolygon());
      Geometry all = OverlayNG.overlay(before, multi(shown), OverlayNG.UNION, GRID);
      if (!all.isEmpty()) {
        exposed.put(plies.get(i), multi(all));
      }
    }
    return exposed;
  }

  private static Terrain terrain(Box carved) {
    CellFrame frame = new CellFrame(carved.minX(), carved.minY(), 1, 1, 90, 70);
    double[] values = new double[frame.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = 100 + 100.0 * (i % 90) / 89;
    }
    return new Terrain(
            new RasterSource("ground.asc", "EPSG:32632", 10),
            new GroundFrame("EPSG:32632", new Box(412000, 5601000, 412900, 5601700), carved, 1),
            new Grid(frame, values),
            new Terrain.Range(100, 200),
            VoidCells.NONE,
            null)
        .with(new VoidCells(3, 0.01, false, null, null));
  }

  private static Geometry box(double minX, double minY, double maxX, double maxY) {
    return FACTORY.toGeometry(new Envelope(minX, maxX, minY, maxY));
  }

  /** All polygons of a geometry as one. */
  public static MultiPolygon multi(Geometry geometry) {
    List<Polygon> polygons = new ArrayList<>();
    for (Object polygon : PolygonExtracter.getPolygons(geometry)) {
      polygons.add((Polygon) polygon);
    }
    return FACTORY.createMultiPolygon(polygons.toArray(new Polygon[0]));
  }

  /** A polygon from x, y, x, y ...; closed here. */
  public static Polygon polygon(double... xy) {
    Coordinate[] ring = new Coordinate[xy.length / 2 + 1];
    for (int i = 0; i < xy.length / 2; i++) {
      ring[i] = new Coordinate(xy[2 * i], xy[2 * i + 1]);
    }
    ring[ring.length - 1] = ring[0].copy();
    return FACTORY.createPolygon(ring);
  }
}
