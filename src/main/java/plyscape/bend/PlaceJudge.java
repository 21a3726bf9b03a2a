package plyscape.bend;

import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import plyscape.layup.Depths;
import plyscape.layup.LeastFloor;
import plyscape.layup.PlyDepth;
import plyscape.layup.PlyShown;
import plyscape.layup.Spot;

/**
 * Judges every ply by the places where it shows: needed clearance and reliability at the worst,
 * risk as the mean (src/contract.md, section 11).
 */
public final class PlaceJudge {

  private final Depths depths;
  private final Bend bend;
  private int ply;
  private double least;
  private double most;
  private double needed;
  private Spot worst;
  private boolean reliable;
  private double risks;
  private int unsanded;
  private LeastFloor floor;
  private int count;

  private PlaceJudge(Depths depths, Bend bend) {
    this.depths = depths;
    this.bend = bend;
  }

  /**
   * What holds of each ply over the places where it shows, by number.
   *
   * @param depths of the panel at hand
   * @param shape how it lies
   * @param spots of equal area, ply by ply
   */
  public static SortedMap<Integer, PlyShown> of(Depths depths, PanelShape shape, List<Spot> spots) {
    SortedMap<Integer, PlyShown> out = new TreeMap<>();
    PlaceJudge judge = new PlaceJudge(depths, shape.bend());
    for (Spot cell : spots) {
      if (cell.ply() != judge.ply) {
        judge.end(out);
        judge.begin(cell.ply());
      }
      judge.add(cell);
    }
    judge.end(out);
    return out;
  }

  /** Risk of a wrong colour at one place. */
  public static double risk(Depths depths, PanelShape shape, Spot spot) {
    return new PlaceJudge(depths, shape.bend()).risk(spot, depths.of(spot.ply(), spot.at()));
  }

  private void begin(int other) {
    ply = other;
    least = Double.POSITIVE_INFINITY;
    most = Double.NEGATIVE_INFINITY;
    needed = -1;
    reliable = true;
    risks = 0;
    unsanded = 0;
    floor = null;
    count = 0;
  }

  private void add(Spot cell) {
    PlyDepth at = depths.of(ply, cell.at());
    least = Math.min(least, at.targetMm());
    most = Math.max(most, at.targetMm());
    if (at.neededMm() > needed) {
      needed = at.neededMm();
      worst = cell;
    }
    reliable &= depths.reliable(at, cell.sanded());
    double cut = cutMm(cell, at);
    double left = depths.thicknessMm(cell.at()) - cut;
    if (floor == null || left < floor.floorMm()) {
      floor = new LeastFloor(left, cell.at(), cut);
    }
    risks += risk(cell, at);
    unsanded += cell.sanded() ? 0 : 1;
    count++;
  }

  private double risk(Spot cell, PlyDepth at) {
    if (Double.isNaN(cell.cutMm())) {
      return cell.sanded()
          ? at.ownRisk()
          : Math.max(at.ownRisk(), depths.risk(cell.ply(), cell.at(), at.targetMm(), false));
    }
    double cut = cutMm(cell, at);
    double sanded = depths.risk(cell.ply(), cell.at(), cut, true);
    return cell.sanded()
        ? sanded
        : Math.max(sanded, depths.risk(cell.ply(), cell.at(), cut, false));
  }

  private double cutMm(Spot cell, PlyDepth at) {
    if (Double.isNaN(cell.cutMm())) {
      return at.targetMm();
    }
    return bend == null
        ? cell.cutMm()
        : bend.depthMm(cell.at().xMm(), cell.at().yMm(), cell.cutMm());
  }

  private void end(SortedMap<Integer, PlyShown> out) {
    if (count > 0) {
      out.put(
          ply,
          new PlyShown(
              least,
              most,
              needed,
              worst.at(),
              reliable,
              risks / count,
              (double) unsanded / count,
              floor));
    }
  }
}
