package plyscape.layup;

import java.util.Iterator;
import java.util.List;
import java.util.Map;
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

  /**
   * Whether a ply's faces are sure of it at a place.
   *
   * @param at where a ply lies at the place
   * @param sanded whether sanding reaches it; else it is judged as it is cut too
   */
  public boolean reliable(PlyDepth at, boolean sanded) {
    return at.reliableHere() && (sanded || model == null || model.reliableUnsanded(at));
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

  /**
   * Probability that one panel shows the wrong ply on more than a hundredth of some places of equal
   * area ({@link PanelRisk}).
   */
  public double panelRisk(List<Spot> spots) {
    return model == null ? 0 : PanelRisk.of(model, spots);
  }

  /** The same depths wherever: those of the panel's centre. */
  public Depths everywhere() {
    return byPlace() ? new Depths(topToBottom) : this;
  }

  /** The same depths, asked for at a place instead of the panel's centre. */
  public Depths at(PanelPoint place) {
    return byPlace()
        ? new Depths(stream().map(d -> of(d.ply().number(), place)).toList(), model)
        : this;
  }

  /** Whether depths differ from place to place. */
  public boolean byPlace() {
    return model != null && model.byPlace();
  }

  /** Whether they curve from the panel's centre outwards, instead of falling evenly. */
  public boolean bows() {
    return model != null && model.bows();
  }

  /**
   * The same depths with what holds over all places where each ply shows.
   *
   * @param shown ply number to what holds; plies that show nowhere are left out
   */
  public Depths shown(Map<Integer, PlyShown> shown) {
    return new Depths(
        topToBottom.stream().map(d -> d.shown(shown.get(d.ply().number()))).toList(), model);
  }

  /** The top ply. */
  public PlyDepth top() {
    return topToBottom.get(0);
  }

  /** The bottom ply. */
  public PlyDepth bottom() {
    return of(plies());
  }

  /** The bottom ply at another place. */
  public PlyDepth bottom(PanelPoint at) {
    return of(plies(), at);
  }

  /** Count of plies. */
  public int plies() {
    return topToBottom.size();
  }

  /** Thickness of the panel, mm: the bottom ply's bottom. */
  public double thicknessMm() {
    return bottom().bottomMm();
  }

  /** The same at a place. */
  public double thicknessMm(PanelPoint at) {
    return byPlace() ? model.thicknessMm(at) : thicknessMm();
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
