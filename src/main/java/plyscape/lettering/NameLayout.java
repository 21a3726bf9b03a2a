package plyscape.lettering;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import plyscape.grid.Box;

/**
 * Puts names beside their places, first come, first served: to the right, else to the left, above
 * or below, wherever a name keeps off the names before it and off the rim.
 */
public final class NameLayout {

  private final Box area;
  private final double apartMm;
  private final List<Envelope> taken = new ArrayList<>();

  /**
   * Begins with nothing placed.
   *
   * @param area that names must stay in, mm
   * @param apartMm kept between names, and between them and the rim
   */
  public NameLayout(Box area, double apartMm) {
    this.area = area;
    this.apartMm = apartMm;
  }

  /**
   * Where a name goes, or nothing when there is no room for it.
   *
   * @param line the name's area, baseline along X from the origin, mm
   * @param x of the place that it names, mm
   * @param y of that place
   * @param offsetMm kept from the place
   */
  public Optional<Geometry> place(Geometry line, double x, double y, double offsetMm) {
    Envelope box = line.getEnvelopeInternal();
    double middle = (box.getMinY() + box.getMaxY()) / 2;
    List<Placing> ways =
        List.of(
            new Placing(x + offsetMm, y - middle, Align.LEFT, 0),
            new Placing(x - offsetMm, y - middle, Align.RIGHT, 0),
            new Placing(x, y + offsetMm - box.getMinY(), Align.CENTRE, 0),
            new Placing(x, y - offsetMm - box.getMaxY(), Align.CENTRE, 0));
    for (Placing way : ways) {
      Geometry placed = way.of(line);
      Envelope room = placed.getEnvelopeInternal();
      room.expandBy(apartMm);
      boolean inside =
          area.contains(room.getMinX(), room.getMinY())
              && area.contains(room.getMaxX(), room.getMaxY());
      if (inside && taken.stream().noneMatch(room::intersects)) {
        taken.add(placed.getEnvelopeInternal());
        return Optional.of(placed);
      }
    }
    return Optional.empty();
  }
}
