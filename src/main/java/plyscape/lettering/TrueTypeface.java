package plyscape.lettering;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.geom.PathIterator;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.planar.Linework;
import plyscape.planar.PlanarMap;
import plyscape.planar.PolygonAssembler;

/**
 * Outlines of a TrueType or OpenType font's file, by the platform's own font code: unhinted, at one
 * size, so that the same file gives the same outlines on every machine. Curves are flattened to a
 * thousandth of the letters' height. Filled where outlines wind around at all, so overlaps are
 * legal.
 */
public final class TrueTypeface implements Typeface {

  /** At this size outlines have whole coordinates in most fonts, which have 1000 or 2048 an em. */
  private static final float EM = 2048;

  /** Outlines are put together on a grid of so many lines a unit. */
  private static final int GRID = 16;

  private static final double FLATNESS = EM / 1500;
  private static final FontRenderContext PLAIN = new FontRenderContext(null, true, true);
  private static final GeometryFactory UNITS = new GeometryFactory();

  private final Font font;
  private final double capUnits;

  private TrueTypeface(Font font) {
    this.font = font;
    this.capUnits = font.createGlyphVector(PLAIN, "H").getVisualBounds().getHeight();
  }

  /**
   * Reads a font.
   *
   * @throws InputFault if the file is no font, or has no capital H, by which height is measured
   */
  public static TrueTypeface of(Path file) {
    try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
      TrueTypeface face = new TrueTypeface(Font.createFont(Font.TRUETYPE_FONT, in).deriveFont(EM));
      if (!(face.capUnits > 0) || !face.font.canDisplay('H')) {
        throw new InputFault(
            Place.file(file.toString()),
            "a font without a capital H",
            "height is that of a capital letter: wanted a font with Latin letters");
      }
      return face;
    } catch (FontFormatException e) {
      throw new InputFault(
          Place.file(file.toString()),
          "not a font that can be read",
          "wanted a TrueType or OpenType file, .ttf or .otf",
          e);
    } catch (IOException e) {
      throw InputFault.unreadable(file.toString(), e);
    }
  }

  @Override
  public Geometry line(String text, double heightMm) {
    GlyphVector glyphs =
        font.layoutGlyphVector(
            PLAIN, text.toCharArray(), 0, text.length(), Font.LAYOUT_LEFT_TO_RIGHT);
    List<Geometry> letters = new ArrayList<>();
    for (int g = 0; g < glyphs.getNumGlyphs(); g++) {
      Geometry letter = filled(glyphs.getGlyphOutline(g));
      if (!letter.isEmpty()) {
        letters.add(letter);
      }
    }
    Geometry line = letters.isEmpty() ? UNITS.createPolygon() : UnaryUnionOp.union(letters);
    double scale = heightMm / capUnits;
    // The platform's Y runs down.
    return AffineTransformation.scaleInstance(scale, -scale).transform(line);
  }

  @Override
  public String lacking(String text) {
    StringBuilder out = new StringBuilder();
    text.codePoints()
        .filter(sign -> !Character.isWhitespace(sign) && !font.canDisplay(sign))
        .forEach(out::appendCodePoint);
    return out.toString();
  }

  /** The area that a letter's outlines wind around, however they overlap. */
  private static Geometry filled(Shape outline) {
    Linework lines = new Linework(1);
    for (Coordinate[] ring : rings(outline)) {
      int[] x = new int[ring.length];
      int[] y = new int[ring.length];
      for (int i = 0; i < ring.length; i++) {
        x[i] = (int) Math.rint(ring[i].x * GRID);
        y[i] = (int) Math.rint(ring[i].y * GRID);
      }
      lines.add(x, y, 0, 1, false);
    }
    PlanarMap map = PlanarMap.of(lines);
    Polygon[] parts =
        new PolygonAssembler(map.chains(), map.faces(), GRID, UNITS)
            .polygons(face -> map.winding(face, 0) != 0).stream()
                .map(PolygonAssembler.Part::polygon)
                .toArray(Polygon[]::new);
    return UNITS.createMultiPolygon(parts);
  }

  private static List<Coordinate[]> rings(Shape outline) {
    List<Coordinate[]> out = new ArrayList<>();
    List<Coordinate> ring = new ArrayList<>();
    double[] at = new double[6];
    for (PathIterator path = outline.getPathIterator(null, FLATNESS); !path.isDone(); path.next()) {
      int kind = path.currentSegment(at);
      if (kind == PathIterator.SEG_MOVETO) {
        close(ring, out);
      }
      if (kind != PathIterator.SEG_CLOSE) {
        ring.add(new Coordinate(at[0], at[1]));
      }
    }
    close(ring, out);
    return out;
  }

  private static void close(List<Coordinate> ring, List<Coordinate[]> out) {
    if (ring.size() >= 3) {
      if (!ring.get(0).equals2D(ring.get(ring.size() - 1))) {
        ring.add(ring.get(0).copy());
      }
      if (ring.size() >= 4) {
        out.add(ring.toArray(Coordinate[]::new));
      }
    }
    ring.clear();
  }
}
