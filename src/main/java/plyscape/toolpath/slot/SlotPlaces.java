package plyscape.toolpath.slot;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.lattice.Sweep;

/**
 * The narrow places of a pocket for a cutter.
 *
 * @param ways the places
 * @param along lattice nodes near the middle of one: rings have nothing to do there
 */
public record SlotPlaces(List<SlotWay> ways, BitSet along) {

  /**
   * Those of one pocket.
   *
   * @param smallest whether no smaller cutter gets there
   */
  public static SlotPlaces of(DistanceField field, double radiusMm, boolean smallest) {
    List<SlotWay> ways = new SlotFinder(field, radiusMm, smallest).find();
    Lattice lattice = field.lattice;
    BitSet along = new BitSet(ways.isEmpty() ? 0 : lattice.size());
    Sweep sweep = new Sweep(lattice);
    for (SlotWay slot : ways) {
      for (int i = 1; i < slot.size(); i++) {
        double wide = Math.max(slot.roomMm(i - 1), slot.roomMm(i)) / 2 + 1.2 * lattice.stepMm();
        sweep.all(
            slot.x()[i - 1],
            slot.y()[i - 1],
            slot.x()[i],
            slot.y()[i],
            wide,
            (first, last) -> along.set(first, last + 1));
      }
    }
    return new SlotPlaces(ways, along);
  }

  /** None. */
  public static SlotPlaces none() {
    return new SlotPlaces(List.of(), new BitSet(0));
  }

  /** Whether a place is about the middle of one. */
  public boolean at(Lattice lattice, double x, double y) {
    return along.get(lattice.nearest(x, y));
  }

  /** Those rings that aren't wholly in such places, or not wholly covered by the ways in them. */
  public List<Ring> without(Lattice lattice, List<Ring> rings) {
    List<Ring> left = new ArrayList<>(rings);
    if (!ways.isEmpty()) {
      SlotCover cover = new SlotCover(ways);
      left.removeIf(ring -> inside(lattice, ring) && cover.of(ring));
    }
    return left;
  }

  private boolean inside(Lattice lattice, Ring ring) {
    for (int i = 0; i < ring.size(); i++) {
      if (!at(lattice, ring.x()[i], ring.y()[i])) {
        return false;
      }
    }
    return true;
  }
}
