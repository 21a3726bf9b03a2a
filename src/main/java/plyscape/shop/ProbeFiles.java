package plyscape.shop;

import java.util.ArrayList;
import java.util.List;
import plyscape.files.CsvRows;
import plyscape.layup.Layup;
import plyscape.layup.PanelPoint;
import plyscape.layup.Ply;
import plyscape.text.Numbers;
import plyscape.text.Visible;

/** The empty files that a measured panel's figures are typed into. */
public final class ProbeFiles {

  /**
   * Shares of an edge's length at which its plies are read: with its ends a bow is distinguished
   * from a taper.
   */
  static final double[] ALONG = {0.05, 0.5, 0.95};

  private ProbeFiles() {}

  /** Heights of the top face, for {@code panel.top_map}. */
  public static String top(ProbePlaces places) {
    StringBuilder out = new StringBuilder();
    out.append(
        "# Heights of the top face in mm, positive up, as the machine shows them (Z), Z0 where");
    out.append(" the programs have it.\n");
    out.append(
        "# x and y: mm from the panel's lower left corner. Rows left empty are passed over.\n");
    out.append("place,x,y,z\n");
    int number = 1;
    for (PanelPoint p : places.places()) {
      out.append(number++).append(',').append(mm(p.xMm())).append(',').append(mm(p.yMm()));
      out.append(",\n");
    }
    return out.toString();
  }

  /** Places on the four edges, round the panel from the lower left. */
  public static List<PanelPoint> edgePlaces(double widthMm, double heightMm) {
    List<PanelPoint> out = new ArrayList<>();
    for (double t : ALONG) {
      out.add(new PanelPoint(t * widthMm, 0));
    }
    for (double t : ALONG) {
      out.add(new PanelPoint(widthMm, t * heightMm));
    }
    for (double t : ALONG) {
      out.add(new PanelPoint((1 - t) * widthMm, heightMm));
    }
    for (double t : ALONG) {
      out.add(new PanelPoint(0, (1 - t) * heightMm));
    }
    return out;
  }

  /** Depths of ply bottoms on the edges, for {@code calibrate}. */
  public static String edges(Layup layup, List<PanelPoint> places) {
    StringBuilder out = new StringBuilder();
    out.append(
        "# Depth of each ply's bottom below the top face in mm, read on the panel's edge.\n");
    out.append("# Rows left empty are passed over; plyscape calibrate reads this file.\n");
    out.append("ply,depth,x,y\n");
    for (PanelPoint p : places) {
      for (Ply ply : layup.plies()) {
        out.append(CsvRows.quoted(Visible.line(ply.name()))).append(",,");
        out.append(mm(p.xMm())).append(',').append(mm(p.yMm())).append('\n');
      }
    }
    return out.toString();
  }

  private static String mm(double value) {
    return Numbers.trimmed(value, 3);
  }
}
