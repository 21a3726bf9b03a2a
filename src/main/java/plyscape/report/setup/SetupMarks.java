package plyscape.report.setup;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import plyscape.bend.TopMap;
import plyscape.bend.TopReading;
import plyscape.plan.CutoutArea;
import plyscape.plan.PanelPlan;
import plyscape.text.Numbers;
import plyscape.text.Template;

/**
 * What else the drawing of the set-up sheet shows where a panel has it: the line along which the
 * piece comes free, its tabs, the holes for pins, and the lowest and highest place of a probed top
 * face. In mm of the panel, Y turned down as SVG has it.
 */
final class SetupMarks {

  private final PanelPlan plan;
  private final double height;
  private final double unit;
  private final StringBuilder out = new StringBuilder();

  private SetupMarks(PanelPlan plan, double unit) {
    this.plan = plan;
    this.unit = unit;
    height = plan.job().panel().heightMm();
  }

  /**
   * The marks as SVG elements, nothing where there is nothing to mark.
   *
   * @param unit a hundredth of the drawing's longer side, mm of the panel
   */
  static String svg(PanelPlan plan, double unit) {
    SetupMarks marks = new SetupMarks(plan, unit);
    plan.cutouts().forEach(marks::cutout);
    plan.landscape().shape().topMap().ifPresent(marks::top);
    return marks.out.toString();
  }

  /** What they mean, each a sentence; nothing where there is nothing to mark. */
  static String key(PanelPlan plan) {
    List<String> words = new ArrayList<>();
    if (plan.cutouts().stream().anyMatch(c -> c.what().equals("outline"))) {
      words.add("Grey line: cut free at the end.");
    }
    if (plan.cutouts().stream().anyMatch(c -> c.what().equals("tab"))) {
      words.add("White in it: tabs.");
    }
    if (plan.cutouts().stream().anyMatch(c -> c.what().equals("pin"))) {
      words.add("Black disks: holes for pins.");
    }
    if (plan.landscape().shape().topMap().isPresent()) {
      words.add("Triangles: highest and lowest place of the top face, in mm as probed.");
    }
    return words.isEmpty() ? "" : " " + String.join(" ", words);
  }

  private void cutout(CutoutArea area) {
    String style =
        switch (area.what()) {
          case "pin" -> "fill=\"#000\"";
          case "tab" -> "fill=\"#fff\"";
          default -> "fill=\"#999\"";
        };
    out.append(
        Template.fill(
            "<path class=\"%s\" d=\"%s\" fill-rule=\"evenodd\" %s stroke=\"#000\""
                + " stroke-width=\"%.3t\"/>\n",
            area.what(), data(area.area()), style, 0.2 * unit));
  }

  private String data(Geometry area) {
    StringBuilder path = new StringBuilder();
    for (int i = 0; i < area.getNumGeometries(); i++) {
      Polygon polygon = (Polygon) area.getGeometryN(i);
      ring(path, polygon.getExteriorRing().getCoordinates());
      for (int k = 0; k < polygon.getNumInteriorRing(); k++) {
        ring(path, polygon.getInteriorRingN(k).getCoordinates());
      }
    }
    return path.toString();
  }

  private void ring(StringBuilder path, Coordinate[] points) {
    for (int i = 0; i + 1 < points.length; i++) {
      path.append(i == 0 ? 'M' : 'L')
          .append(Numbers.trimmed(points[i].x, 2))
          .append(' ')
          .append(Numbers.trimmed(height - points[i].y, 2));
    }
    path.append('Z');
  }

  private void top(TopMap map) {
    Comparator<TopReading> byHeight = Comparator.comparingDouble(TopReading::z);
    mark("highest", map.readings().stream().max(byHeight).orElseThrow(), -1);
    mark("lowest", map.readings().stream().min(byHeight).orElseThrow(), 1);
  }

  /** A triangle that points up or down, and the height beside it, towards the panel's middle. */
  private void mark(String name, TopReading at, int down) {
    double side = 2.2 * unit;
    double y = height - at.y();
    boolean right = at.x() < plan.job().panel().widthMm() / 2;
    out.append(
        Template.fill(
            "<g id=\"%s\"><path d=\"M%.3t %.3tl%.3t %.3tl%.3t 0Z\" stroke=\"#fff\""
                + " stroke-width=\"%.3t\"/>",
            name, at.x(), y + down * side, side, -2 * down * side, -2 * side, 0.4 * unit));
    out.append(
        Template.fill(
            "<text x=\"%.3t\" y=\"%.3t\" text-anchor=\"%s\" font-size=\"%.3t\" stroke=\"#fff\""
                + " stroke-width=\"%.3t\" paint-order=\"stroke\">%s</text></g>\n",
            at.x() + (right ? 3.2 : -3.2) * unit,
            Math.max(4.5 * unit, Math.min(height - unit, y + 1.6 * unit)),
            right ? "start" : "end",
            4.6 * unit,
            1.2 * unit,
            (at.z() > 0 ? "+" : "") + Numbers.fixed(at.z(), 2)));
  }
}
