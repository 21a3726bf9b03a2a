package plyscape.render;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** Pictures as the JDK's PNG reader sees them. */
class PicturesTest {

  private static final int MARGIN = 36;

  @Test
  void preview_showsEachPlyWhereThePlanSaysSo() throws Exception {
    byte[] png = PreviewPicture.png(HandPlan.landscape());
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
    // 1000 px for 100 mm; points well inside of regions and away from shadows, Y up.
    assertEquals(0x9cc45f, at(image, 10, 10));
    assertEquals(0xe3bd58, at(image, 25, 25));
    assertEquals(0x9cc45f, at(image, 33, 45));
    assertEquals(0xb4553a, at(image, 42, 38));
    assertEquals(0x1f4e79, at(image, 82, 30));
    // The north wall of the bar keeps the sun off: 3.4 mm deep, so its shadow reaches 3.4 / sqrt 2
    // = 2.4 mm.
    assertTrue((at(image, 82, 68.5) & 255) < 0x79 * 0.9, "shadow under the north wall");
    assertEquals(0x1f4e79, at(image, 82, 67.0));
    assertArrayEquals(png, PreviewPicture.png(HandPlan.landscape()), "same plan, same bytes");
  }

  @Test
  void section_showsPliesBelowTheFinishedFace() throws Exception {
    BufferedImage image =
        ImageIO.read(new ByteArrayInputStream(SectionPicture.png(HandPlan.landscape(), 40)));
    // 1200 px across 100 mm, 330 px down 5 mm, corner at (100, 100).
    assertEquals(
        0x9cc45f,
        image.getRGB(100 + 12 * 10, 100 + 33)
            & 0xffffff); // uncut border and ground: ply 1 at 0.5 mm
    assertEquals(
        0xe3bd58,
        image.getRGB(100 + 12 * 25, 100 + 66 + 60) & 0xffffff); // under the ring's face at 1.5
    assertTrue(
        (image.getRGB(100 + 12 * 80, 100 + 190) & 255) > 0xd0, "pale where the bar is cut to 3.5");
    assertEquals(0x1f4e79, image.getRGB(100 + 12 * 80, 100 + 250) & 0xffffff);
  }

  @Test
  void sectionLine_crossesHoleAndIsland() {
    SectionLine line = SectionLine.of(HandPlan.landscape().tiling(), 0, 40, 100, 40);
    assertEquals(
        List.of(
            new SectionLine.Span(5, 20, 1),
            new SectionLine.Span(20, 30, 2),
            new SectionLine.Span(30, 36, 1),
            new SectionLine.Span(36, 44, 3),
            new SectionLine.Span(44, 50, 1),
            new SectionLine.Span(50, 60, 2),
            new SectionLine.Span(60, 70, 1),
            new SectionLine.Span(70, 90, 4),
            new SectionLine.Span(90, 95, 1)),
        line.spans());
  }

  @Test
  void sectionLine_alongAnEdgeAndAcross_coversTheCarvedAreaOnce() {
    for (double[] ends :
        new double[][] {{0, 20, 100, 20}, {0, 0, 100, 80}, {70, 80, 70, 0}, {3, 77, 97, 2}}) {
      SectionLine line =
          SectionLine.of(HandPlan.landscape().tiling(), ends[0], ends[1], ends[2], ends[3]);
      double end = Double.NaN;
      double sum = 0;
      for (SectionLine.Span span : line.spans()) {
        assertTrue(
            Double.isNaN(end) || Math.abs(span.fromMm() - end) < 1e-9, "gap or overlap at " + span);
        end = span.toMm();
        sum += span.toMm() - span.fromMm();
      }
      assertEquals(chord(ends), sum, 1e-9);
    }
  }

  /** Length inside the carved area 5..95 x 5..75, by clipping the parameter range. */
  private static double chord(double[] e) {
    double from = 0;
    double to = 1;
    double[][] axes = {{e[0], e[2], 5, 95}, {e[1], e[3], 5, 75}};
    for (double[] a : axes) {
      double d = a[1] - a[0];
      if (d != 0) {
        from = Math.max(from, Math.min((a[2] - a[0]) / d, (a[3] - a[0]) / d));
        to = Math.min(to, Math.max((a[2] - a[0]) / d, (a[3] - a[0]) / d));
      }
    }
    return (to - from) * Math.hypot(e[2] - e[0], e[3] - e[1]);
  }

  private static int at(BufferedImage image, double xMm, double yMm) {
    return image.getRGB(MARGIN + (int) (xMm * 10), MARGIN + (int) ((80 - yMm) * 10)) & 0xffffff;
  }
}
