package plyscape.layup;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.stream.Stream;

/**
 * Where each ply of a panel lies and how it is cut, asked for by ply; top to bottom when gone
 * through. Depths in mm, positive down from the top face. Immutable.
 */
public final class Depths implements Iterable<PlyDepth> {

  private final List<PlyDepth> topToBottom;
  private final DepthModel model;

  /**
   * The depths of all plies of a panel, the same at all places.
   *
   * @param topToBottom one a ply, at least one
   */
  public Depths(List<PlyDepth> topToBottom) {
    this(topToBottom, null);
  }

  /**
   * Depths at the panel's centre and everywhere.
   *
   * @param model for other places, or null
   */
  Depths(List<PlyDepth> topToBottom, DepthModel model) {
    this.model = model;
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

  /** The ply of that number, 1 at the top; at the panel's centre. */
  public PlyDepth of(int plyNumber) {
    return topToBottom.get(plyNumber - 1);
  }

  /** The same at another place. */
  public PlyDepth of(int plyNumber, PanelPoint at) {
    return byPlace() ? model.depth(of(plyNumber).ply(), at) : of(plyNumber);
  }

  /** The same where sanding may not reach: the worse of the face as cut and as sanded. */
  public PlyDepth unsanded(int plyNumber, PanelPoint at) {
    return model == null ? of(plyNumber) : model.unsanded(of(plyNumber).ply(), at);
  }

  /**
   * Risk of a face that isn't at its ply's target depth.
   *
   * @param cutMm depth to which it is cut there
   * @param sanded whether sanding reaches it
   */
  public double risk(int plyNumber, PanelPoint at, double cutMm, boolean sanded) {
    return model == null
        ? of(plyNumber).risk()
        : model.risk(of(plyNumber).ply(), at, cutMm, sanded);
  }

  /** Whether depths differ from place to place. */
  public boolean byPlace() {
    return model != null && model.byPlace();
  }

  /**
   * The same depths with each risk taken where it is worst when the face may lie anywhere in its
   * ply's window: at the window's upper or lower end.
   *
   * @param windows one a ply; null where no face is, and closed where all faces are at the target
   */
  public Depths worstIn(List<FaceWindow> windows) {
    List<PlyDepth> out = new ArrayList<>();
    for (PlyDepth depth : topToBottom) {
      FaceWindow window = windows.get(out.size());
      out.add(
          model == null || window == null || !window.open()
              ? depth
              : depth.withRisk(
                  Math.max(
                      model.risk(depth.ply(), model.centre(), window.upperMm(), true),
                      model.risk(depth.ply(), model.centre(), window.lowerMm(), true))));
    }
    return new Depths(out, model);
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
