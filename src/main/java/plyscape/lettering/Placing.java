package plyscape.lettering;

import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * Where a line of text goes. Immutable.
 *
 * @param x of its aligned end, on the baseline, panel mm
 * @param y of the baseline there, panel mm
 * @param align which end that is
 * @param angleDegrees by which it is turned about that place, counter-clockwise
 */
public record Placing(double x, double y, Align align, double angleDegrees) {

  /** The line's area on the panel; turned and moved, never mirrored. */
  public Geometry of(Geometry line) {
    Envelope box = line.getEnvelopeInternal();
    double shift =
        switch (align) {
          case LEFT -> 0;
          case CENTRE -> -box.getMaxX() / 2;
          case RIGHT -> -box.getMaxX();
        };
    AffineTransformation way = AffineTransformation.translationInstance(shift, 0);
    way.rotate(Math.toRadians(angleDegrees));
    way.translate(x, y);
    return way.transform(line);
  }
}
