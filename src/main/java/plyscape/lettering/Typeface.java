package plyscape.lettering;

import org.locationtech.jts.geom.Geometry;

/** Letters of one kind: turns a line of text into the area that is cut. */
public interface Typeface {

  /**
   * The area of a line of text, valid, mm: its baseline along X from the origin, Y up.
   *
   * @param text one line
   * @param heightMm of a capital letter
   */
  Geometry line(String text, double heightMm);

  /** Letters of a text that it lacks, in order; empty when it has them all. */
  String lacking(String text);
}
