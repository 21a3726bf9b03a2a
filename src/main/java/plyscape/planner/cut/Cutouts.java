package plyscape.planner.cut;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import plyscape.fault.InputFault;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.job.MapPick;
import plyscape.job.OutlineSpec;
import plyscape.job.PinsSpec;
import plyscape.job.ZoneSpec;
import plyscape.layup.PlyDepth;
import plyscape.machine.Tool;
import plyscape.plan.CutoutArea;
import plyscape.plan.Landscape;
import plyscape.simulate.BentPanel;
import plyscape.text.Template;
import plyscape.toolpath.cutout.OutlineCut;
import plyscape.toolpath.cutout.OutlineForm;
import plyscape.toolpath.cutout.PinBores;
import plyscape.toolpath.task.Pass;
import plyscape.toolpath.task.ToolRun;
import plyscape.zones.ZoneReader;

/**
 * Pins and outline of a panel: their runs, before and after all others, and what they may cut.
 * Immutable.
 *
 * @param before runs before the pockets'
 * @param after runs after them
 * @param areas what both cut
 */
public record Cutouts(List<ToolRun> before, List<ToolRun> after, List<CutoutArea> areas) {

  /** A pin holds when at least this share of its hole is left under the pocket over it. */
  private static final double PIN_SHARE = 0.5;

  /** A cutter bores only what is so much wider than itself. */
  private static final double BORE = 1.05;

  private static final GeometryFactory MM = new GeometryFactory();

  /**
   * Checks, before any map is read, that there are cutters for both.
   *
   * @throws JobFault if one is missing
   */
  public static void require(Job job, double thicknessMm) {
    if (job.additions().pins() != null) {
      pinTool(job, job.tools());
    }
    if (job.additions().outline() != null) {
      outlineTool(job, job.tools(), thicknessMm);
    }
  }

  /**
   * Plans both.
   *
   * @param tools the job's, as the flat plan may use them
   */
  static Cutouts of(Landscape panel, List<Tool> tools, Warnings warnings) {
    List<ToolRun> before = new ArrayList<>();
    List<ToolRun> after = new ArrayList<>();
    List<CutoutArea> areas = new ArrayList<>();
    Job job = panel.job();
    if (job.additions().pins() != null) {
      before.add(pins(panel, pinTool(job, tools), areas));
    }
    if (job.additions().outline() != null) {
      Tool tool = outlineTool(job, tools, new CutoutDepths(panel).thicknessMm(true));
      after.add(outline(panel, tool, areas, warnings));
    }
    return new Cutouts(List.copyOf(before), List.copyOf(after), List.copyOf(areas));
  }

  /** How far below the panel's bottom the outline goes, mm. */
  static double throughMm(Job job) {
    OutlineSpec outline = job.additions().outline();
    return outline == null ? 0 : outline.throughMm();
  }

  private static Tool pinTool(Job job, List<Tool> tools) {
    PinsSpec pins = job.additions().pins();
    return longEnough(tools, pins.depthMm())
        .filter(tool -> tool.diameterMm() * BORE <= pins.diameterMm())
        .max(Comparator.comparingDouble(Tool::diameterMm))
        .orElseThrow(
            () ->
                new JobFault(
                    Template.fill(
                        "no flat cutter under %.2f mm that comes down %.2f mm for the pins' holes",
                        pins.diameterMm() / BORE, pins.depthMm()),
                    "list a thinner or longer cutter, or set pins.diameter or pins.depth"));
  }

  private static Tool outlineTool(Job job, List<Tool> tools, double thicknessMm) {
    OutlineSpec outline = job.additions().outline();
    double depth = thicknessMm + outline.throughMm();
    return longEnough(tools, depth)
        .filter(tool -> outline.toolName() == null || tool.name().equals(outline.toolName()))
        .max(Comparator.comparingDouble(Tool::diameterMm))
        .orElseThrow(
            () ->
                new JobFault(
                    Template.fill(
                        "%s comes down the %.2f mm of the outline (panel and spoil board)",
                        outline.toolName() == null
                            ? "no flat cutter"
                            : "\"" + outline.toolName() + "\" isn't flat or not",
                        depth),
                    "list a flat cutter with longer flutes, and stickout to match, or name another"
                        + " as outline.tool"));
  }

  private static Stream<Tool> longEnough(List<Tool> tools, double depthMm) {
    return tools.stream()
        .filter(tool -> tool.shape() == Tool.Shape.FLAT)
        .filter(tool -> tool.fluteLengthMm() >= depthMm)
        .filter(tool -> tool.stickoutMm() == 0 || tool.stickoutMm() >= depthMm);
  }

  private static ToolRun pins(Landscape panel, Tool tool, List<CutoutArea> areas) {
    PinsSpec pins = panel.job().additions().pins();
    for (double[] at : pins.at()) {
      Geometry hole =
          MM.createPoint(new Coordinate(at[0], at[1])).buffer(pins.diameterMm() / 2, 32);
      requireWood(panel, pins, at, hole);
      areas.add(new CutoutArea("pin", pins.depthMm(), 0, hole, new CutoutDepths(panel).pins()));
    }
    PinBores bores = new PinBores(pins.diameterMm(), pins.depthMm(), tool, panel.job().machine());
    int ply = plyAt(panel, pins.depthMm());
    return new ToolRun(
        tool, List.of(new Pass(ply, pins.depthMm(), 0, bores.moves(pins.at()), Pass.Kind.PINS)));
  }

  /** A pin in a deep pocket would hold by little. */
  private static void requireWood(Landscape panel, PinsSpec pins, double[] at, Geometry hole) {
    panel
        .tiling()
        .exposed()
        .forEach(
            (ply, area) -> {
              double flat = panel.cutMm(ply).lowerMm();
              double cut =
                  panel.shape().flat() ? flat : panel.shape().bend().depthMm(at[0], at[1], flat);
              if (cut > (1 - PIN_SHARE) * pins.depthMm() && area.intersects(hole)) {
                throw new JobFault(
                    Template.fill(
                        "the pin at %.2f, %.2f stands where the panel is cut %.2f mm deep (%s): of"
                            + " its %.2f mm too little is left",
                        at[0], at[1], cut, panel.depths().of(ply).ply().name(), pins.depthMm()),
                    "move it into the border, or set a greater pins.depth");
              }
            });
  }

  private static int plyAt(Landscape panel, double depthMm) {
    int out = 1;
    for (PlyDepth depth : panel.depths()) {
      out = depth.topMm() < depthMm ? depth.ply().number() : out;
    }
    return out;
  }

  private static ToolRun outline(
      Landscape panel, Tool tool, List<CutoutArea> areas, Warnings warnings) {
    OutlineSpec spec = panel.job().additions().outline();
    double depth = panel.thicknessMm() + spec.throughMm();
    double tabTop = panel.thicknessMm() - spec.tabs().heightMm();
    double thinnest = new CutoutDepths(panel).thicknessMm(false);
    if (spec.tabs().heightMm() > thinnest) {
      throw new JobFault(
          Template.fill(
              "tabs of %.2f mm are higher than the panel, %.2f mm",
              spec.tabs().heightMm(), thinnest),
          "set a smaller outline.tab_height");
    }
    OutlineForm form =
        new OutlineForm(
            depth, spec.allowanceMm(), spec.tabs().count(), spec.tabs().widthMm(), tabTop);
    OutlineCut cut = new OutlineCut(piece(panel, warnings), form, tool, panel.job().machine());
    BentPanel.Level level = new CutoutDepths(panel).outline();
    Geometry kerf = cut.kerf();
    requireApart(areas, kerf);
    new CutoutDepths(panel).warnShallow(warnings);
    areas.add(new CutoutArea("outline", depth, 0, kerf, level));
    if (spec.tabs().count() > 0) {
      areas.add(new CutoutArea("tab", depth, depth - tabTop, cut.atTabs(), level));
    } else {
      warnings.add(
          "outline-no-tabs",
          "nothing holds the piece when the outline comes through: it may be thrown by the cutter;"
              + " hold it by vacuum, tape or screws, or set outline.tabs",
          "outline");
    }
    return new ToolRun(tool, cut.passes(panel.depths().plies()));
  }

  /** A hole that the outline cuts open holds no pin. */
  private static void requireApart(List<CutoutArea> pins, Geometry kerf) {
    for (CutoutArea pin : pins) {
      if (pin.area().intersects(kerf)) {
        Coordinate at = pin.area().getCentroid().getCoordinate();
        throw new JobFault(
            Template.fill("the outline's cut opens the pin's hole at %.2f, %.2f", at.x, at.y),
            "move the pin or the outline so that wood stays between them");
      }
    }
  }

  private static Polygon piece(Landscape panel, Warnings warnings) {
    OutlineSpec spec = panel.job().additions().outline();
    double width = panel.job().panel().widthMm();
    double height = panel.job().panel().heightMm();
    if (spec.shape().panel()) {
      return polygon(List.of(0.0, 0.0, width, 0.0, width, height, 0.0, height));
    }
    Polygon piece =
        spec.shape().map() != null
            ? fromMap(panel, spec.shape().map(), warnings)
            : polygon(spec.shape().corners());
    if (!piece.isValid() || piece.getArea() < 1) {
      throw new InputFault(
          spec.place(),
          "an outline that crosses itself or has no area",
          "wanted its corners in order around it");
    }
    var box = piece.getEnvelopeInternal();
    if (box.getMinX() < 0 || box.getMinY() < 0 || box.getMaxX() > width || box.getMaxY() > height) {
      throw new InputFault(
          spec.place(), "an outline beyond the panel", "wanted corners on the panel, in mm");
    }
    return piece;
  }

  private static Polygon polygon(List<Double> corners) {
    int n = corners.size() / 2;
    Coordinate[] ring = new Coordinate[n + 1];
    for (int i = 0; i <= n; i++) {
      ring[i] = new Coordinate(corners.get(2 * (i % n)), corners.get(2 * (i % n) + 1));
    }
    return MM.createPolygon(ring);
  }

  private static Polygon fromMap(Landscape panel, MapPick map, Warnings warnings) {
    Geometry area =
        ZoneReader.read(
                List.of(ZoneSpec.areas("outline", map, 1)), panel.terrain().frame(), warnings)
            .get(0)
            .area();
    if (area.getNumGeometries() != 1) {
      throw new JobFault(
          "outline.shape picks " + area.getNumGeometries() + " polygons on the carved area",
          "wanted one: set outline.shape.where");
    }
    return MM.createPolygon(((Polygon) area.getGeometryN(0)).getExteriorRing().getCoordinates());
  }

  /** Lines for the heads of its programs. */
  static Optional<String> caution(Pass.Kind kind) {
    return kind == Pass.Kind.OUTLINE
        ? Optional.of(
            "the piece comes free: tabs hold it, a cutter can throw it; spoil board under it")
        : Optional.empty();
  }
}
