package plyscape.lettering;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.operation.union.UnaryUnionOp;

/** The built-in letters, as wide as a cutter needs: round ends and joins. */
public final class StrokeTypeface implements Typeface {

  private static final GeometryFactory MM = new GeometryFactory();

  /** Segments of a quarter circle: chords are within 0.004 mm of it at a stroke of 3 mm. */
  private static final int QUADRANT = 16;

  private final double strokeMm;

  /** Letters with strokes of a full width. */
  public StrokeTypeface(double strokeMm) {
    if (!(strokeMm > 0)) {
      throw new IllegalArgumentException("no stroke: " + strokeMm + " mm");
    }
    this.strokeMm = strokeMm;
  }

  @Override
  public Geometry line(String text, double heightMm) {
    // The stroke's width counts with the height of the capitals.
    double unit = Math.max(heightMm - strokeMm, heightMm / 10) / StrokeAlphabet.CAP_UNITS;
    List<Geometry> strokes = new ArrayList<>();
    double at = 0;
    for (Glyph glyph : StrokeAlphabet.glyphs(text)) {
      for (double[] stroke : glyph.strokes()) {
        strokes.add(line(stroke, at, unit).buffer(strokeMm / 2, QUADRANT));
      }
      at += glyph.advance() * unit + (glyph.strokes().isEmpty() ? 0 : strokeMm);
    }
    return strokes.isEmpty() ? MM.createPolygon() : UnaryUnionOp.union(strokes);
  }

  private LineString line(double[] stroke, double at, double unit) {
    Coordinate[] points = new Coordinate[stroke.length / 2];
    for (int i = 0; i < points.length; i++) {
      points[i] =
          new Coordinate(
              at + stroke[2 * i] * unit + strokeMm / 2, stroke[2 * i + 1] * unit + strokeMm / 2);
    }
    return MM.createLineString(points);
  }

  @Override
  public String lacking(String text) {
    StringBuilder out = new StringBuilder();
    text.codePoints()
        .filter(
            sign ->
                StrokeAlphabet.glyphs(Character.toString(sign)).stream().anyMatch(g -> !g.known()))
        .forEach(out::appendCodePoint);
    return out.toString();
  }
}
