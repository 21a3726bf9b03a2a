package plyscape.render.layer;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.MultiPolygon;
import plyscape.files.PlanFiles;
import plyscape.job.Job;
import plyscape.layup.PlyDepth;
import plyscape.plan.Landscape;
import plyscape.plan.Version;
import plyscape.text.Markup;
import plyscape.text.Numbers;
import plyscape.text.Template;

/**
 * One SVG file a ply that shows: the polygons in which it does (path {@code exposed}) and its
 * pocket P_k (path {@code pocket}), and the panel's edge (path {@code outline}). Size and view box
 * are the whole panel in mm, Y down, even-odd rule, no transform.
 */
public final class SvgLayers {

  private SvgLayers() {}

  /** The files, top ply first. */
  public static List<LayerFile> write(Landscape plan) {
    List<LayerFile> files = new ArrayList<>();
    for (Map.Entry<Integer, MultiPolygon> exposed : plan.tiling().exposed().entrySet()) {
      PlyDepth depth = plan.depths().of(exposed.getKey());
      files.add(
          new LayerFile(
              PlanFiles.layerName(depth.ply().number(), depth.ply().name()) + ".svg",
              layer(plan, depth, exposed.getValue())));
    }
    return files;
  }

  private static String layer(Landscape plan, PlyDepth depth, MultiPolygon exposed) {
    Job.PanelSpec panel = plan.job().panel();
    int number = depth.ply().number();
    MultiPolygon pocket = plan.tiling().pockets().get(number);
    String ids =
        Template.fill(
            " data-ply=\"%d\" data-name=\"%s\" data-target-mm=\"%.6t\""
                + " data-top-mm=\"%.6t\" data-bottom-mm=\"%.6t\"",
            number,
            Markup.escape(depth.ply().name()),
            depth.targetMm(),
            depth.topMm(),
            depth.bottomMm());
    String line = "fill=\"none\" stroke=\"#777777\" stroke-width=\"0.1\"";
    String filled = "fill=\"" + depth.ply().colour() + "\" stroke=\"none\"";
    return head(panel)
        + title(plan, depth)
        + path("pocket", pocket, ids, line, panel.heightMm())
        + path("exposed", exposed, ids, filled, panel.heightMm())
        + outline(panel)
        + "</svg>\n";
  }

  private static String title(Landscape plan, PlyDepth depth) {
    return Template.fill(
        "<title>Ply %d: %s</title>\n<desc>%s</desc>\n",
        depth.ply().number(),
        Markup.escape(depth.ply().name()),
        Markup.escape(describe(plan, depth)));
  }

  /** The panel's edge, unfilled, so that a layer is placed by it wherever it is opened. */
  private static String outline(Job.PanelSpec panel) {
    String width = Numbers.trimmed(panel.widthMm(), 3);
    String height = Numbers.trimmed(panel.heightMm(), 3);
    return "<path id=\"outline\" fill=\"none\" stroke=\"#000000\" stroke-width=\"0.1\"\nd=\"M0 0H"
        + width
        + "V"
        + height
        + "H0Z\"/>\n";
  }

  /** The opening tag: true size in mm, one unit a mm. */
  public static String head(Job.PanelSpec panel) {
    String width = Numbers.trimmed(panel.widthMm(), 6);
    String height = Numbers.trimmed(panel.heightMm(), 6);
    return Template.fill(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
            + "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"%smm\""
            + " height=\"%smm\" viewBox=\"0 0 %s %s\">\n",
        width, height, width, height);
  }

  private static String path(
      String id, MultiPolygon area, String ids, String style, double heightMm) {
    return Template.fill(
        "<path id=\"%s\"%s data-area-mm2=\"%.6t\" fill-rule=\"evenodd\" %s\nd=\"%s\"/>\n",
        id, ids, area.getArea(), style, SvgPath.data(area, heightMm));
  }

  private static String describe(Landscape plan, PlyDepth depth) {
    return Template.fill(
        "exposed: where %s shows, %s%s. pocket: where this ply or a deeper one shows. Panel %.3t x"
            + " %.3t mm, lower left corner at the bottom left. plyscape %s",
        depth.ply().name(),
        plan.cutMm(depth.ply().number()).cutText(),
        depth.targetMm() > 0 ? " mm below the top face" : "",
        plan.job().panel().widthMm(),
        plan.job().panel().heightMm(),
        Version.TEXT);
  }
}
