package plyscape.report.json;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.grid.Box;

/**
 * Reads a {@code plan.json} back, as far as {@code verify} needs it; keys it doesn't know are left
 * alone.
 */
public final class PlanJsonReader {

  private final String file;

  private PlanJsonReader(String file) {
    this.file = file;
  }

  /**
   * The figures in a file's text.
   *
   * @param file its name, for messages
   * @throws InputFault if it isn't JSON, isn't of our schema or lacks something
   */
  public static PlanFigures read(String file, String text) {
    JsonNode root;
    try {
      root = new ObjectMapper().readTree(text);
    } catch (JsonProcessingException e) {
      JsonLocation at = e.getLocation();
      Place place =
          at == null ? Place.file(file) : Place.at(file, at.getLineNr(), at.getColumnNr());
      throw new InputFault(
          place,
          "not JSON: " + e.getOriginalMessage(),
          "a plan.json that plyscape wrote is wanted",
          e);
    }
    return new PlanJsonReader(file).figures(root);
  }

  private PlanFigures figures(JsonNode root) {
    String schema = root.path("schema").asText("");
    if (!schema.equals(PlanJson.SCHEMA)) {
      throw fault("schema", "is \"" + schema + "\"", "\"" + PlanJson.SCHEMA + "\" is wanted");
    }
    JsonNode panel = root.path("panel");
    JsonNode faces = root.path("surface").path("faces");
    return new PlanFigures(
        text(root.path("version"), "version"),
        number(panel.path("width_mm"), "panel.width_mm"),
        number(panel.path("height_mm"), "panel.height_mm"),
        number(panel.path("thickness_mm"), "panel.thickness_mm"),
        panel.path("flatness_mm").asDouble(0),
        carved(panel),
        plies(root),
        tools(root),
        passes(root),
        number(root.path("verification").path("uncut_mm2"), "verification.uncut_mm2"),
        cutouts(root.path("cutouts")),
        root.path("time").path("spin_up_s").asDouble(0),
        bend(root),
        faces.isTextual() ? faces.textValue() : null);
  }

  private Box carved(JsonNode panel) {
    double[] carved = new double[4];
    JsonNode corners = list(panel, "panel.carved", "carved");
    for (int i = 0; i < 4; i++) {
      carved[i] = number(corners.path(i), "panel.carved");
    }
    return box(carved);
  }

  private List<PlanFigures.PlyFigures> plies(JsonNode root) {
    List<PlanFigures.PlyFigures> plies = new ArrayList<>();
    for (JsonNode ply : list(root, "plies", "plies")) {
      String at = "plies[" + plies.size() + "].";
      plies.add(
          new PlanFigures.PlyFigures(
              (int) number(ply.path("number"), at + "number"),
              text(ply.path("name"), at + "name"),
              text(ply.path("colour"), at + "colour"),
              number(ply.path("top_mm"), at + "top_mm"),
              number(ply.path("bottom_mm"), at + "bottom_mm"),
              number(ply.path("target_mm"), at + "target_mm"),
              number(ply.path("area_mm2"), at + "area_mm2")));
    }
    return List.copyOf(plies);
  }

  private List<PlanFigures.ToolFigures> tools(JsonNode root) {
    List<PlanFigures.ToolFigures> tools = new ArrayList<>();
    for (JsonNode tool : list(root, "tools", "tools")) {
      String at = "tools[" + tools.size() + "].";
      tools.add(
          new PlanFigures.ToolFigures(
              text(tool.path("name"), at + "name"),
              positive(tool.path("diameter_mm"), at + "diameter_mm"),
              tool.path("shape").asText(""),
              cutting(tool, at)));
    }
    return List.copyOf(tools);
  }

  private List<PlanFigures.PassFigures> passes(JsonNode root) {
    List<PlanFigures.PassFigures> passes = new ArrayList<>();
    for (JsonNode pass : list(root, "passes", "passes")) {
      String at = "passes[" + passes.size() + "].";
      passes.add(
          new PlanFigures.PassFigures(
              text(pass.path("file"), at + "file"),
              text(pass.path("tool"), at + "tool"),
              number(pass.path("depth_mm"), at + "depth_mm")));
    }
    return List.copyOf(passes);
  }

  /** Where pins and outline are cut; a plan without them doesn't say. */
  private List<PlanFigures.CutoutFigures> cutouts(JsonNode node) {
    List<PlanFigures.CutoutFigures> out = new ArrayList<>();
    for (JsonNode cutout : node) {
      String at = "cutouts[" + out.size() + "].";
      List<double[]> rings = new ArrayList<>();
      for (JsonNode ring : list(cutout, at + "rings", "rings")) {
        double[] xy = new double[ring.size()];
        for (int i = 0; i < xy.length; i++) {
          xy[i] = number(ring.path(i), at + "rings");
        }
        rings.add(xy);
      }
      out.add(
          new PlanFigures.CutoutFigures(
              number(cutout.path("depth_mm"), at + "depth_mm"),
              number(cutout.path("slack_mm"), at + "slack_mm"),
              List.copyOf(rings),
              plane(cutout.path("target_plane"), at + "target_plane")));
    }
    return List.copyOf(out);
  }

  /** How a tool is run; plans of earlier versions don't say. */
  private PlanFigures.RunFigures cutting(JsonNode tool, String at) {
    return tool.path("rpm").isMissingNode()
        ? null
        : new PlanFigures.RunFigures(
            number(tool.path("rpm"), at + "rpm"),
            number(tool.path("feed"), at + "feed"),
            number(tool.path("thin_feed"), at + "thin_feed"),
            number(tool.path("plunge"), at + "plunge"),
            number(tool.path("stepdown_mm"), at + "stepdown_mm"));
  }

  /** How the panel lies, or null where the plan has nothing of it. */
  private PlanFigures.BendFigures bend(JsonNode root) {
    JsonNode map = root.path("panel").path("top_map");
    List<double[]> readings = new ArrayList<>();
    for (JsonNode point : map.path("points")) {
      double[] one = new double[3];
      for (int i = 0; i < 3; i++) {
        one[i] = number(point.path(i), "panel.top_map.points");
      }
      one[2] -= number(map.path("flat_face_z_mm"), "panel.top_map.flat_face_z_mm");
      readings.add(one);
    }
    List<double[]> targets = new ArrayList<>();
    for (JsonNode ply : root.path("plies")) {
      double[] plane = plane(ply.path("target_plane"), "plies.target_plane");
      if (plane != null) {
        double target = number(ply.path("target_mm"), "plies.target_mm");
        targets.add(new double[] {target, plane[0], plane[1], plane[2], plane[3]});
      }
    }
    double[] bottom = plane(root.path("panel").path("bottom_plane"), "panel.bottom_plane");
    return targets.isEmpty() ? null : new PlanFigures.BendFigures(readings, targets, bottom);
  }

  /** A depth by place, or null where there is none; the fourth number may be missing. */
  private double[] plane(JsonNode node, String key) {
    if (!node.isArray()) {
      return null;
    }
    double[] out = new double[4];
    for (int i = 0; i < Math.max(3, Math.min(4, node.size())); i++) {
      out[i] = number(node.path(i), key);
    }
    return out;
  }

  private Box box(double[] corners) {
    try {
      return new Box(corners[0], corners[1], corners[2], corners[3]);
    } catch (IllegalArgumentException e) {
      throw fault("panel.carved", "isn't a box", "[minx, miny, maxx, maxy] in mm is wanted");
    }
  }

  private JsonNode list(JsonNode parent, String key, String name) {
    JsonNode node = parent.path(name);
    if (!node.isArray()) {
      throw fault(key, "isn't a list", "");
    }
    return node;
  }

  private double number(JsonNode node, String key) {
    if (!node.isNumber() || !Double.isFinite(node.doubleValue())) {
      throw fault(key, "isn't a number", "");
    }
    return node.doubleValue();
  }

  private double positive(JsonNode node, String key) {
    double value = number(node, key);
    if (!(value > 0)) {
      throw fault(key, "isn't over 0", "");
    }
    return value;
  }

  private String text(JsonNode node, String key) {
    if (!node.isTextual()) {
      throw fault(key, "isn't text", "");
    }
    return node.textValue();
  }

  private InputFault fault(String key, String found, String wanted) {
    return new InputFault(
        new Place(file, 0, 0, key), found, wanted.isEmpty() ? "write the plan again" : wanted);
  }
}
