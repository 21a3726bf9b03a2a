package plyscape.render;

import java.util.ArrayList;
import java.util.List;
import plyscape.bend.TopFace;
import plyscape.bend.TopMap;
import plyscape.job.Job;
import plyscape.plan.Landscape;
import plyscape.text.Numbers;
import plyscape.text.Template;

/**
 * Lines of equal height of the panel's top face as probed, for pictures: by marching squares over
 * samples, exact to a sample's width. Panel mm. Immutable.
 *
 * @param stepMm between lines
 * @param lines all of them
 */
public record TopContours(double stepMm, List<Line> lines) {

  private static final int SAMPLES = 96;

  /** About how many lines a picture can hold. */
  private static final int LINES = 8;

  /**
   * A piece of a line.
   *
   * @param heightMm of the face there
   */
  public record Line(double x0, double y0, double x1, double y1, double heightMm) {}

  /** Keeps a copy. */
  public TopContours {
    lines = List.copyOf(lines);
  }

  /** Of a panel with a map of its top face. */
  static TopContours of(TopMap map, Job.PanelSpec panel) {
    double step = 0.01;
    double[] rounds = {2, 2.5, 2};
    for (int i = 0; (map.highMm() - map.lowMm()) / step > LINES; i++) {
      step *= rounds[i % 3];
    }
    List<Line> lines = new ArrayList<>();
    double dx = panel.widthMm() / SAMPLES;
    double dy = panel.heightMm() / SAMPLES;
    for (double height = Math.ceil(map.lowMm() / step) * step;
        height <= map.highMm();
        height += step) {
      for (int r = 0; r < SAMPLES; r++) {
        for (int c = 0; c < SAMPLES; c++) {
          cell(map.face(), c * dx, r * dy, new double[] {dx, dy, height}, lines);
        }
      }
    }
    return new TopContours(step, lines);
  }

  /** The lines in one cell: its edges are gone round, each two crossings make a piece. */
  private static void cell(TopFace face, double x, double y, double[] size, List<Line> lines) {
    double[][] corners = {{x, y}, {x + size[0], y}, {x + size[0], y + size[1]}, {x, y + size[1]}};
    List<double[]> crossings = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      double[] a = corners[i];
      double[] b = corners[(i + 1) % 4];
      double za = face.heightMm(a[0], a[1]) - size[2];
      double zb = face.heightMm(b[0], b[1]) - size[2];
      if (za >= 0 != zb >= 0) {
        double t = za / (za - zb);
        crossings.add(new double[] {a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])});
      }
    }
    for (int i = 0; i + 1 < crossings.size(); i += 2) {
      double[] a = crossings.get(i);
      double[] b = crossings.get(i + 1);
      lines.add(new Line(a[0], a[1], b[0], b[1], size[2]));
    }
  }

  /** A drawing for a page: lines, readings with their heights, low and high; y down, mm. */
  public static String svg(Landscape plan) {
    TopMap map = plan.shape().topMap().orElseThrow();
    Job.PanelSpec panel = plan.job().panel();
    TopContours contours = of(map, panel);
    double unit = Math.max(panel.widthMm(), panel.heightMm()) / 100;
    StringBuilder out = new StringBuilder();
    out.append("<svg class=\"top-map\" viewBox=\"0 0 ").append(mm(panel.widthMm())).append(' ');
    out.append(mm(panel.heightMm())).append("\" role=\"img\" style=\"max-width:520px\"><title>");
    out.append("Heights of the top face</title><rect width=\"100%\" height=\"100%\"");
    out.append(" fill=\"#f7f3ea\" stroke=\"#888\" stroke-width=\"").append(mm(unit / 4));
    out.append("\"/>");
    for (Line line : contours.lines()) {
      String colour = line.heightMm() < -1e-9 ? "#2c6e9b" : "#a6531d";
      out.append("<path d=\"M").append(mm(line.x0())).append(' ');
      out.append(mm(panel.heightMm() - line.y0())).append('L').append(mm(line.x1())).append(' ');
      out.append(mm(panel.heightMm() - line.y1())).append("\" stroke=\"").append(colour);
      out.append("\" stroke-width=\"").append(mm(unit / 3)).append("\"/>");
    }
    map.readings()
        .forEach(
            r -> {
              out.append("<circle cx=\"").append(mm(r.x())).append("\" cy=\"");
              out.append(mm(panel.heightMm() - r.y())).append("\" r=\"").append(mm(unit / 2));
              out.append("\" fill=\"#222\"/>");
              if (map.readings().size() <= 60) {
                boolean left = r.x() > panel.widthMm() * 0.8;
                out.append("<text x=\"").append(mm(r.x() + (left ? -unit : unit)));
                out.append("\" y=\"").append(mm(panel.heightMm() - r.y() + unit * 2.6));
                out.append("\" font-size=\"").append(mm(unit * 2.6)).append('"');
                out.append(left ? " text-anchor=\"end\">" : ">");
                out.append(Numbers.fixed(r.z(), 2)).append("</text>");
              }
            });
    return out.append("</svg>\n").toString();
  }

  /** Draws the lines over a picture of the panel. */
  static void draw(Canvas top, Landscape plan, double pxPerMm) {
    plan.shape()
        .topMap()
        .ifPresent(
            map -> {
              double height = plan.job().panel().heightMm();
              for (Line l : of(map, plan.job().panel()).lines()) {
                top.line(
                    l.x0() * pxPerMm,
                    (height - l.y0()) * pxPerMm,
                    l.x1() * pxPerMm,
                    (height - l.y1()) * pxPerMm,
                    1,
                    Colours.INK);
              }
            });
  }

  /** What the lines mean, in words; "" without a map. */
  public static String words(Landscape plan) {
    return plan.shape()
        .topMap()
        .map(
            map ->
                Template.fill(
                    "Lines: the top face as probed at %s places, %.2f to %.2f mm, every %.3t mm.",
                    map.readings().size(),
                    map.lowMm(),
                    map.highMm(),
                    of(map, plan.job().panel()).stepMm()))
        .orElse("");
  }

  private static String mm(double value) {
    return Numbers.trimmed(value, 2);
  }
}
