package plyscape.toolpath.cover;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Predicate;
import plyscape.toolpath.lattice.CoarseMap;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.ring.Chunks;
import plyscape.toolpath.ring.Piece;

/**
 * Chooses the stretches of rings that a step needs. Rings are tried from the inside out, as they
 * will be cut: those inside by {@link InnerCover}, those along walls, of index 0, by {@link
 * WallCover}. What is chosen is marked in the nodes of the step.
 */
public final class RingCover {

  /** Rings whose cover is found together. */
  private static final int GROUP = 64;

  private final Lattice lattice;
  private final StepNodes nodes;
  private final double radius;
  private final double sure;
  private final InnerCover inside;
  private final WallCover walls;

  /** For the nodes of a step, and a cutter. */
  public RingCover(StepNodes nodes, double radiusMm, double stepoverMm) {
    this.nodes = nodes;
    radius = radiusMm;
    lattice = nodes.lattice();
    // What lies this far within the disk's rim is cleared up to the middle between nodes: no speck
    // hides there.
    sure = Math.max(radiusMm / 2, radiusMm - 0.71 * lattice.stepMm());
    inside = new InnerCover(nodes, sure, stepoverMm);
    walls = new WallCover(nodes, radiusMm, sure);
  }

  /**
   * The stretches needed, inner ones first.
   *
   * @param near blocks near which something is wanted
   * @param need of the walls
   * @param leastSpotMm2 what a short ring at a wall must clear, mm2; less is left to a later cutter
   */
  public List<Piece> choose(List<Ring> rings, CoarseMap near, WallNeed need, double leastSpotMm2) {
    List<Piece> pieces = new ArrayList<>();
    inGroups(
        rings,
        point -> true,
        cover -> {
          if (cover.ring.index() != 0) {
            inside.choose(cover, pieces);
          } else if (!walls.leave(cover.ring, leastSpotMm2)) {
            walls.choose(cover, need, near, pieces);
          }
        });
    return pieces;
  }

  /**
   * Stretches of any rings that clear what was left.
   *
   * @param near blocks outside which nothing was
   */
  public List<Piece> chooseForLeft(List<Ring> rings, CoarseMap near) {
    CoarseMap left = nodes.nearLeft(radius, near);
    List<Piece> pieces = new ArrayList<>();
    inGroups(
        left.near(rings),
        point -> left.near(point[0], point[1]),
        cover -> {
          if (cover.ring.index() != 0) {
            inside.chooseForLeft(cover, left, pieces);
          } else {
            walls.chooseForLeft(cover, left, pieces);
          }
        });
    return pieces;
  }

  /**
   * Hands rings over one by one, inner ones first; what they cover is found for a group of them at
   * a time.
   *
   * @param asked chunks that begin at such a point
   */
  private void inGroups(List<Ring> rings, Predicate<double[]> asked, Consumer<ChunkCover> each) {
    List<Ring> order = new ArrayList<>(rings);
    order.sort(Comparator.comparingInt((Ring ring) -> -ring.index()));
    for (int from = 0; from < order.size(); from += GROUP) {
      order.subList(from, Math.min(order.size(), from + GROUP)).parallelStream()
          .map(ring -> cover(ring, asked))
          .toList()
          .forEach(each);
    }
  }

  private ChunkCover cover(Ring ring, Predicate<double[]> asked) {
    Chunks chunks = Chunks.of(ring, Math.max(4 * lattice.stepMm(), Math.min(1, radius / 3)));
    boolean wall = ring.index() == 0; // looked at otherwise
    return new ChunkCover(
        ring,
        chunks,
        lattice,
        sure,
        c ->
            !wall
                && asked.test(new double[] {chunks.x(chunks.start(c)), chunks.y(chunks.start(c))}));
  }
}
