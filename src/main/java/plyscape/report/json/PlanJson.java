package plyscape.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import plyscape.bend.TopMap;
import plyscape.fault.Warning;
import plyscape.files.FileDigest;
import plyscape.files.PlanFiles;
import plyscape.grid.Box;
import plyscape.job.Fingerprint;
import plyscape.layup.Depths;
import plyscape.layup.FaceWindow;
import plyscape.layup.PlyDepth;
import plyscape.layup.PlyShown;
import plyscape.machine.Tool;
import plyscape.plan.CutoutArea;
import plyscape.plan.Landscape;
import plyscape.plan.LyingPanel;
import plyscape.plan.PanelPlan;
import plyscape.plan.PathFigures;
import plyscape.plan.ToolProgram;
import plyscape.plan.Version;
import plyscape.simulate.BentPanel;
import plyscape.simulate.Verification;
import plyscape.standing.WeakPart;
import plyscape.terrain.Terrain;
import plyscape.zones.Zone;

/**
 * {@code plan.json} after section 8 of src/contract.md: same keys, same order. Numbers have full
 * precision, written with the fewest digits that give the same double back, by the same code on
 * every JDK. What a preview doesn't have is {@code null}.
 */
public final class PlanJson {

  /** Value of the key {@code schema}. */
  public static final String SCHEMA = "plyscape-plan-1";

  private PlanJson() {}

  /** The file's text, LF at the end. */
  public static String text(PanelPlan plan) {
    return JsonTree.text(tree(plan), true) + "\n";
  }

  /** The same of a plan without toolpaths. */
  public static String text(Landscape regions) {
    return JsonTree.text(tree(regions), true) + "\n";
  }

  /** The file as a tree. */
  public static ObjectNode tree(PanelPlan plan) {
    ObjectNode root = head(plan.landscape(), plan.programs());
    root.putObject("time")
        .put("cut_s", plan.time().cutS())
        .put("rapid_s", plan.time().rapidS())
        .put("total_s", plan.time().totalS())
        .put("lower_bound_s", plan.time().lowerBoundS())
        .put("spin_up_s", plan.landscape().job().machine().spinUpS());
    verification(root.putObject("verification"), plan.verification());
    standing(root.putObject("standing"), plan.landscape());
    if (!plan.cutouts().isEmpty()) {
      cutouts(root.putArray("cutouts"), plan.cutouts());
    }
    warnings(root.putArray("warnings"), plan.warnings());
    paths(root.putArray("paths"), plan.programs());
    return root;
  }

  /** The same of a plan without toolpaths. */
  public static ObjectNode tree(Landscape regions) {
    ObjectNode root = head(regions, List.of());
    root.putNull("time");
    root.putNull("verification");
    standing(root.putObject("standing"), regions);
    warnings(root.putArray("warnings"), regions.warnings());
    root.putArray("paths");
    return root;
  }

  /** From the schema to the passes. */
  private static ObjectNode head(Landscape plan, List<ToolProgram> programs) {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("schema", SCHEMA);
    root.put("version", Version.TEXT);
    root.put("layup", plan.job().layup().name());
    inputs(root, plan.job().origin().fingerprint());
    panel(root.putObject("panel"), plan);
    terrain(root.putObject("terrain"), plan.terrain());
    plies(root.putArray("plies"), plan);
    root.put("panel_risk", plan.panelRisk());
    plan.faces()
        .ifPresent(
            faces ->
                root.putObject("surface")
                    .put("kind", "sculpted")
                    .put("cusp_mm", faces.cuspMm())
                    .put("faces", PlanFiles.FACES));
    zones(root.putArray("zones"), plan);
    tools(root.putArray("tools"), plan.job().tools(), programs);
    passes(root.putArray("passes"), plan.depths(), programs);
    return root;
  }

  /** Every file that was read, and what else decides the output; nothing of it in a preview. */
  private static void inputs(ObjectNode root, Fingerprint fingerprint) {
    ArrayNode inputs = root.putArray("inputs");
    for (FileDigest input : fingerprint.inputs()) {
      inputs.addObject().put("path", input.path()).put("sha256", input.sha256());
    }
    String options = fingerprint.optionsSha256();
    root.put("options_sha256", options.isEmpty() ? null : options);
    if (!fingerprint.moreFiles().isEmpty()) {
      ArrayNode more = root.putArray("more_files");
      fingerprint.moreFiles().forEach(more::add);
    }
  }

  /** Where pins and outline are cut, for {@code verify}. */
  private static void cutouts(ArrayNode node, List<CutoutArea> cutouts) {
    for (CutoutArea cutout : cutouts) {
      ObjectNode one =
          node.addObject()
              .put("what", cutout.what())
              .put("depth_mm", cutout.depthMm())
              .put("slack_mm", cutout.slackMm());
      if (cutout.level() != null) {
        plane(one.putArray("target_plane"), cutout.level());
      }
      ArrayNode rings = one.putArray("rings");
      for (Object ring : LinearComponentExtracter.getLines(cutout.area())) {
        ArrayNode points = rings.addArray();
        for (Coordinate point : ((LineString) ring).getCoordinates()) {
          points.add(point.x).add(point.y);
        }
      }
    }
  }

  /** Fins and posts that are likely to break, the slenderest first. */
  private static void standing(ObjectNode node, Landscape plan) {
    ArrayNode weak = node.putArray("weak");
    for (WeakPart part : plan.standing().weak()) {
      ObjectNode one = weak.addObject();
      one.putArray("at").add(part.at().x).add(part.at().y);
      one.put("width_mm", part.widthMm())
          .put("height_mm", part.heightMm())
          .put("ply", name(plan.depths(), part.ply()));
    }
    node.put("area_mm2", plan.standing().areaMm2()).put("cured_mm2", plan.standing().curedMm2());
  }

  private static void warnings(ArrayNode node, List<Warning> warnings) {
    for (Warning warning : warnings) {
      node.addObject()
          .put("code", warning.code())
          .put("message", warning.message())
          .put("where", warning.where());
    }
  }

  /** Beyond src/contract.md: how good each program's paths are, see {@link PathFigures}. */
  private static void paths(ArrayNode paths, List<ToolProgram> programs) {
    for (ToolProgram program : programs) {
      PathFigures f = program.paths();
      PathFigures.Stretch longest = f.width().longest();
      ObjectNode node =
          paths
              .addObject()
              .put("file", f.file())
              .put("travel_mm", f.way().travelMm())
              .put("travel_bound_mm", f.way().boundMm())
              .put("bytes", f.size().bytes())
              .put("plain_bytes", f.size().plainBytes())
              .put("cut_mm", f.width().cutMm())
              .put("wide_mm", f.width().wideMm())
              .put("longest_wide_mm", longest.mm());
      if (longest.mm() > 0) {
        node.putArray("longest_wide_at").add(longest.x()).add(longest.y());
        node.put("longest_wide_feed", longest.feed());
      }
    }
  }

  private static void panel(ObjectNode panel, Landscape plan) {
    Box carved = plan.tiling().carved();
    panel
        .put("width_mm", plan.job().panel().widthMm())
        .put("height_mm", plan.job().panel().heightMm())
        .put("thickness_mm", plan.thicknessMm());
    panel
        .putArray("carved")
        .add(carved.minX())
        .add(carved.minY())
        .add(carved.maxX())
        .add(carved.maxY());
    panel.put("flatness_mm", plan.job().layup().flatnessMm());
    if (!plan.shape().flat()) {
      plane(panel.putArray("bottom_plane"), LyingPanel.bottom(plan.depths()));
    }
    TopMap map = plan.shape().topMap().orElse(null);
    if (map == null) {
      panel.putNull("top_map");
      return;
    }
    ObjectNode top =
        panel
            .putObject("top_map")
            .put("file", plan.job().origin().nameOf(Path.of(map.file())))
            .put("readings", map.readings().size())
            .put("low_mm", map.lowMm())
            .put("high_mm", map.highMm());
    if (map.leftOutRmsMm().isPresent()) {
      top.put("left_out_rms_mm", map.leftOutRmsMm().getAsDouble());
    } else {
      top.putNull("left_out_rms_mm");
    }
    top.put("flat_face_z_mm", plan.shape().faceMm());
    ArrayNode points = top.putArray("points");
    map.readings().forEach(r -> points.addArray().add(r.x()).add(r.y()).add(r.z()));
  }

  /**
   * Beyond the contract, for whoever cuts the programs again: a ply's target depth at the panel's
   * lower left corner and its change a mm of X and of Y, of panels whose depths go by place or
   * whose top was probed.
   */
  private static void targetPlane(ObjectNode ply, Landscape plan, PlyDepth depth) {
    if (!plan.shape().flat() && depth.targetMm() > 0) {
      plane(ply.putArray("target_plane"), LyingPanel.level(plan.depths(), depth));
    }
  }

  private static void plane(ArrayNode node, BentPanel.Level level) {
    node.add(level.originMm()).add(level.perX()).add(level.perY());
    if (level.perSquare() != 0) {
      node.add(level.perSquare());
    }
  }

  private static void terrain(ObjectNode node, Terrain terrain) {
    node.put("file", terrain.file())
        .put("crs", terrain.crs())
        .put("zmin_m", terrain.zminM())
        .put("zmax_m", terrain.zmaxM())
        .put("cell_m", terrain.cellM())
        .put("voids_filled", terrain.voidsFilled())
        .put("ground_per_panel_mm", terrain.frame().metresPerMm());
    if (!terrain.frame().turn().none()) {
      node.put("turn_deg", terrain.frame().turn().degrees());
    }
  }

  /**
   * Every ply. Where faces follow the terrain also the range of depths that its faces are cut to,
   * and where they lie after sanding; {@code target_mm} stays the middle of the ply less the
   * sanding, {@code risk} is the mean over the area.
   */
  private static void plies(ArrayNode plies, Landscape plan) {
    for (PlyDepth depth : plan.depths()) {
      MultiPolygon shown = plan.tiling().exposed().get(depth.ply().number());
      double area = shown == null ? 0 : shown.getArea();
      ObjectNode ply =
          plies
              .addObject()
              .put("number", depth.ply().number())
              .put("name", depth.ply().name())
              .put("colour", depth.ply().colour())
              .put("top_mm", depth.topMm())
              .put("bottom_mm", depth.bottomMm())
              .put("mid_mm", depth.midMm())
              .put("target_mm", depth.targetMm())
              .put("needed_mm", depth.neededMm())
              .put("available_mm", depth.availableMm())
              .put("reliable", depth.reliable())
              .put("risk", depth.risk())
              .put("area_mm2", area)
              .put("share", area / plan.tiling().carved().area());
      targetPlane(ply, plan, depth);
      double[] breaks = Breaks.ofPly(plan, depth.ply().number());
      if (breaks == null) {
        ply.putNull("breaks_m");
      } else {
        ply.putArray("breaks_m").add(breaks[0]).add(breaks[1]);
      }
      places(ply, depth);
      FaceWindow cut = plan.cutMm(depth.ply().number());
      if (cut.open()) {
        double sanding = plan.job().allowance().sandingMm();
        ply.putArray("cut_mm").add(cut.upperMm()).add(cut.lowerMm());
        ply.putArray("finished_mm").add(cut.upperMm() + sanding).add(cut.lowerMm() + sanding);
      }
    }
  }

  /** What holds of a ply over all places where it shows; of the centre when it shows nowhere. */
  private static void places(ObjectNode ply, PlyDepth depth) {
    PlyShown shown = depth.shown();
    ply.putArray("target_range_mm")
        .add(shown == null ? depth.targetMm() : shown.leastTargetMm())
        .add(shown == null ? depth.targetMm() : shown.mostTargetMm());
    ply.put("needed_worst_mm", shown == null ? depth.neededMm() : shown.neededWorstMm());
    if (shown == null) {
      ply.putNull("worst_at");
    } else {
      ply.putArray("worst_at").add(shown.worstAt().xMm()).add(shown.worstAt().yMm());
    }
    ply.put("unsanded_share", shown == null ? 0 : shown.unsandedShare());
  }

  private static void zones(ArrayNode zones, Landscape plan) {
    for (Zone zone : plan.zones()) {
      ObjectNode node = zones.addObject().put("name", zone.spec().name());
      Integer ply = zone.spec().plyNumber();
      node.put("ply", ply == null ? null : name(plan.depths(), ply));
      node.put("features", zone.features()).put("area_mm2", zone.area().getArea());
      ArrayNode skipped = node.putArray("skipped");
      for (Zone.Skipped feature : zone.skipped()) {
        skipped.addObject().put("feature", feature.feature()).put("why", feature.why());
      }
    }
  }

  private static void tools(ArrayNode node, List<Tool> tools, List<ToolProgram> programs) {
    for (Tool tool : tools) {
      boolean used = programs.stream().anyMatch(program -> program.tool().equals(tool));
      node.addObject()
          .put("name", tool.name())
          .put("diameter_mm", tool.diameterMm())
          .put("used", used)
          .put("shape", tool.shape().name().toLowerCase(Locale.ROOT))
          .put("rpm", tool.rpm())
          .put("feed", tool.feedMmPerMin())
          .put("thin_feed", tool.thinFeedMmPerMin())
          .put("plunge", tool.plungeMmPerMin())
          .put("stepdown_mm", tool.stepdownMm());
    }
  }

  private static void passes(ArrayNode passes, Depths depths, List<ToolProgram> programs) {
    for (ToolProgram program : programs) {
      for (ToolProgram.PassSummary pass : program.passes()) {
        passes
            .addObject()
            .put("file", program.file())
            .put("tool", program.tool().name())
            .put("depth_mm", pass.depthMm())
            .put("ply", name(depths, pass.plyNumber()))
            .put("stepdown_from_mm", pass.stepdownFromMm())
            .put("cut_mm", pass.cutMm())
            .put("rapid_mm", pass.rapidMm())
            .put("plunges", pass.plunges())
            .put("time_s", pass.timeS());
      }
    }
  }

  private static void verification(ObjectNode node, Verification verification) {
    node.put("cell_mm", verification.cellMm())
        .put("matched_share", verification.matchedShare())
        .put("gouged_mm2", verification.gougedMm2())
        .put("gouge_max_mm", verification.gougeMaxMm())
        .put("uncut_mm2", verification.uncutMm2())
        .put("unreachable_mm2", verification.unreachableMm2())
        .put("collisions", verification.collisions().size())
        .put("bite_max_mm", verification.biteMaxMm())
        .put("bite_max_share", verification.biteMaxShare());
  }

  private static String name(Depths depths, int plyNumber) {
    return depths.of(plyNumber).ply().name();
  }
}
