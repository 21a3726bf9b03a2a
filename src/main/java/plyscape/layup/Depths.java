package plyscape.layup;

import java.util.Iterator;
import java.util.List;
import java.util.stream.Stream;

/**
 * Where each ply of a panel lies and how it is cut, asked for by ply; top to bottom when gone
 * through. Depths in mm, positive down from the top face. Immutable.
 */
public final class Depths implements Iterable<PlyDepth> {

  private final List<PlyDepth> topToBottom;

  /**
   * The depths of all plies of a panel.
   *
   * @param topToBottom one a ply, at least one
   */
  public Depths(List<PlyDepth> topToBottom) {
    this.topToBottom = List.copyOf(topToBottom);
    if (topToBottom.isEmpty()) {
      throw new IllegalArgumentException("a panel without plies");
    }
    for (int i = 0; i < topToBottom.size(); i++) {
      if (topToBottom.get(i).ply().number() != i + 1) {
        throw new IllegalArgumentException(
            "ply " + topToBottom.get(i).ply().number() + " at place " + (i + 1));
      }
    }
  }

  /** The ply of that number, 1 at the top. */
  public PlyDepth of(int plyNumber) {
    return topToBottom.get(plyNumber - 1);
  }

  /** Where that ply lies. */
  public PlyDepth of(Ply ply) {
    return of(ply.number());
  }

  /** The top ply. */
  public PlyDepth top() {
    return topToBottom.get(0);
  }

  /** The bottom ply. */
  public PlyDepth bottom() {
    return of(plies());
  }

  /** Count of plies. */
  public int plies() {
    return topToBottom.size();
  }

  /** Thickness of the panel, mm: the bottom ply's bottom. */
  public double thicknessMm() {
    return bottom().bottomMm();
  }

  /** Wood left under the cut when the given ply is the deepest that is cut, mm. */
  public double floorMm(int deepestPly) {
    return thicknessMm() - of(deepestPly).targetMm();
  }

  /** All plies but the bottom one, top to bottom: those with a ply below them. */
  public List<PlyDepth> allButBottom() {
    return topToBottom.subList(0, plies() - 1);
  }

  /** All plies, top to bottom. */
  public Stream<PlyDepth> stream() {
    return topToBottom.stream();
  }

  /** All plies, top to bottom. */
  @Override
  public Iterator<PlyDepth> iterator() {
    return topToBottom.iterator();
  }
}
