package plyscape.planner;

import java.util.SortedMap;
import java.util.TreeMap;
import plyscape.job.Job;
import plyscape.layup.LeastFloor;
import plyscape.layup.PanelPoint;
import plyscape.layup.PlyShown;
import plyscape.plan.Landscape;
import plyscape.plan.Tile;

/**
 * What holds of each ply over all panels of a landscape whose panels were probed or measured one by
 * one: the worst of their verdicts, and the mean of their risks by the area that each shows. Not
 * for several threads.
 */
final class TileVerdicts {

  private final Job.PanelSpec panels;
  private final SortedMap<Integer, Sum> sums = new TreeMap<>();

  /** Of panels of that size. */
  TileVerdicts(Job.PanelSpec panels) {
    this.panels = panels;
  }

  /** A ply so far, and the area that it shows. */
  private record Sum(PlyShown shown, double areaMm2) {}

  /** Takes a panel in. */
  void add(Tile<Landscape> tile) {
    double left = (tile.column() - 1) * panels.widthMm();
    double bottom = (tile.row() - 1) * panels.heightMm();
    tile.plan()
        .tiling()
        .exposed()
        .forEach(
            (ply, area) -> {
              PlyShown shown = tile.plan().depths().of(ply).shown();
              sums.merge(
                  ply, new Sum(moved(shown, left, bottom), area.getArea()), TileVerdicts::both);
            });
  }

  /** The whole with verdicts of its panels; places are counted from its lower left corner. */
  Landscape over(Landscape whole) {
    SortedMap<Integer, PlyShown> all = new TreeMap<>();
    sums.forEach((ply, sum) -> all.put(ply, sum.shown()));
    return whole.shown(all);
  }

  private static PlyShown moved(PlyShown s, double left, double bottom) {
    LeastFloor f = s.floor();
    return new PlyShown(
        s.leastTargetMm(),
        s.mostTargetMm(),
        s.neededWorstMm(),
        moved(s.worstAt(), left, bottom),
        s.reliable(),
        s.risk(),
        s.unsandedShare(),
        new LeastFloor(f.floorMm(), moved(f.at(), left, bottom), f.cutMm()));
  }

  private static PanelPoint moved(PanelPoint at, double left, double bottom) {
    return new PanelPoint(at.xMm() + left, at.yMm() + bottom);
  }

  private static Sum both(Sum a, Sum b) {
    double area = a.areaMm2() + b.areaMm2();
    double share = area > 0 ? a.areaMm2() / area : 0;
    PlyShown p = a.shown();
    PlyShown q = b.shown();
    boolean first = p.neededWorstMm() >= q.neededWorstMm();
    return new Sum(
        new PlyShown(
            Math.min(p.leastTargetMm(), q.leastTargetMm()),
            Math.max(p.mostTargetMm(), q.mostTargetMm()),
            Math.max(p.neededWorstMm(), q.neededWorstMm()),
            first ? p.worstAt() : q.worstAt(),
            p.reliable() && q.reliable(),
            share * p.risk() + (1 - share) * q.risk(),
            share * p.unsandedShare() + (1 - share) * q.unsandedShare(),
            p.floor().floorMm() <= q.floor().floorMm() ? p.floor() : q.floor()),
        area);
  }
}
