package plyscape.render;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.util.Set;
import java.util.TreeSet;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import plyscape.grid.Box;
import plyscape.plan.Landscape;

class MorePicturesTest {

  /**
   * The south wall of a block through the bar's middle: plies 1 to 5 on the block's side, 1 to 4 on
   * the bar's far wall.
   */
  @Test
  void block_wallsShowEveryPlyThatTheyCutThrough() {
    Landscape plan = HandPlan.landscape();
    Canvas view = new BlockView(plan, new Box(66, 30, 94, 74), 2).draw(600);
    // A wall in the south's light has the ply's colour times 0.66.
    for (int rgb : new int[] {0x9cc45f, 0xe3bd58, 0xb4553a, 0x1f4e79, 0xd9c7a5}) {
      int wall = Colours.light(rgb, 0.66);
      long count = java.util.Arrays.stream(view.pixels()).filter(p -> p == wall).count();
      assertTrue(
          count > 200,
          "stripes of "
              + Integer.toHexString(rgb)
              + " on walls to the south: "
              + count
              + " pixels");
    }
    // The west side of the block is cut through ply 1 only down to 5: the lower plies show there in
    // the west's light.
    int west = Colours.light(0xb4553a, 0.84);
    assertTrue(java.util.Arrays.stream(view.pixels()).filter(p -> p == west).count() > 200);
  }

  /** Stripes of equal plies take equal parts of a wall's height. */
  @Test
  void block_stripesAreAsHighAsTheirPlies() {
    Canvas view = new BlockView(HandPlan.landscape(), new Box(66, 6, 94, 34), 4).draw(800);
    int[] wall = new int[] {0x9cc45f, 0xe3bd58, 0xb4553a, 0x1f4e79, 0xd9c7a5};
    int[] runs = new int[5];
    int x = view.width() - 250; // a column that begins on the south side
    for (int y = 0; y < view.height(); y++) {
      for (int k = 0; k < 5; k++) {
        runs[k] += view.pixels()[y * view.width() + x] == Colours.light(wall[k], 0.66) ? 1 : 0;
      }
    }
    // Ply 5 shows only on the block's own side, ply 4 there and (0.5 mm of it) on the bar's far
    // wall when that is in the column.
    assertEquals(runs[4], runs[2] > 1.5 * runs[4] ? runs[2] / 2.0 : runs[2], 3);
    assertTrue(runs[4] > 15, "a ply of 1 mm is " + runs[4] + " pixels high");
  }

  @Test
  void blockPicture_sameBytesTwice() {
    assertArrayEquals(
        BlockPicture.png(HandPlan.landscape()), BlockPicture.png(HandPlan.landscape()));
  }

  @Test
  void liveliest_findsTheSquareWithMostPlies() {
    Box box = BlockPicture.liveliest(HandPlan.landscape(), 50);
    Set<Integer> plies = new TreeSet<>();
    CellMap map = CellMap.of(HandPlan.landscape(), 100);
    for (int x = (int) box.minX(); x < box.maxX(); x++) {
      for (int y = (int) box.minY(); y < box.maxY(); y++) {
        plies.add(map.ply(x, 79 - y));
      }
    }
    assertTrue(plies.containsAll(Set.of(1, 2, 3, 4)), box + " shows " + plies);
  }

  @Test
  void riskMap_stepsAreUpperBounds() throws Exception {
    assertEquals(RiskStep.TINY, RiskStep.of(0));
    assertEquals(RiskStep.TINY, RiskStep.of(1e-6));
    assertEquals(RiskStep.SMALL, RiskStep.of(1.1e-6));
    assertEquals(RiskStep.SOME, RiskStep.of(1e-3));
    assertEquals(RiskStep.LARGE, RiskStep.of(1e-2));
    assertEquals(RiskStep.MORE, RiskStep.of(0.5));
    BufferedImage image =
        ImageIO.read(new ByteArrayInputStream(RiskPicture.png(HandPlan.landscape())));
    assertEquals(
        0x266e46,
        image.getRGB(36 + 9 * 25, 36 + 9 * 50) & 0xffffff,
        "a reliable ply is in the safest step");
    assertEquals(0xd8d4cc, image.getRGB(36 + 10, 36 + 10) & 0xffffff, "the border has no risk");
  }

  @Test
  void differences_haveALegendBelow() throws Exception {
    byte[] verdicts = new byte[600 * 400];
    verdicts[0] = 1;
    short[] plies = new short[verdicts.length];
    BufferedImage image =
        ImageIO.read(
            new ByteArrayInputStream(
                DifferencePicture.png(
                    new DifferencePicture.Cells(600, 400, 0.1, verdicts, plies),
                    new int[] {0x204060},
                    0xffffff)));
    assertEquals(600, image.getWidth());
    assertTrue(image.getHeight() > 480);
    assertEquals(0xd40000, image.getRGB(0, 399) & 0xffffff, "the south-west cell");
    boolean red = false;
    for (int y = 400; y < image.getHeight(); y++) {
      red |= (image.getRGB(12, y) & 0xffffff) == 0xd40000;
    }
    assertTrue(red, "the legend tells what red is");
  }

  /** Layups are held to 127 plies; the raster takes more than a byte holds. */
  @Test
  void raster_holdsLargePlyNumbers() {
    java.util.SortedMap<Integer, org.locationtech.jts.geom.MultiPolygon> exposed =
        new java.util.TreeMap<>();
    exposed.put(499, HandPlan.multi(HandPlan.polygon(0, 0, 4, 0, 4, 2, 0, 2)));
    PlyRaster raster =
        PlyRaster.of(HandPlan.tiling(new Box(0, 0, 4, 2), exposed, java.util.List.of()), 4, 4, 1);
    assertArrayEquals(
        new short[] {0, 0, 0, 0, 0, 0, 0, 0, 499, 499, 499, 499, 499, 499, 499, 499},
        raster.plies());
  }

  @Test
  void cellMap_pliesAndZones() {
    CellMap map = CellMap.of(HandPlan.landscape(), 100);
    assertEquals(100, map.columns());
    assertEquals(80, map.rows());
    assertEquals(0, map.ply(2, 40));
    assertEquals(2, map.ply(25, 80 - 25));
    assertEquals(3, map.ply(40, 40));
    assertEquals(4, map.ply(80, 20));
    assertEquals(1, map.zone(80, 20));
    assertEquals(0, map.zone(40, 40));
    // The runs decode to the same cells.
    byte[] bytes = java.util.Base64.getDecoder().decode(map.plyRuns());
    int cell = 0;
    for (int at = 0; at < bytes.length; ) {
      int value = bytes[at++];
      int length = 0;
      int shift = 0;
      do {
        length |= (bytes[at] & 127) << shift;
        shift += 7;
      } while ((bytes[at++] & 128) != 0);
      for (int k = 0; k < length; k++, cell++) {
        assertEquals(map.ply(cell % 100, cell / 100), value);
      }
    }
    assertEquals(8000, cell);
  }

  @Test
  void labels_standInTheirRegionsWithRoom() {
    CellMap map = CellMap.of(HandPlan.landscape(), 1000);
    Set<Integer> labelled = new TreeSet<>();
    for (PlyLabels.Label label : PlyLabels.of(HandPlan.landscape(), 3)) {
      assertEquals(
          label.plyNumber(),
          map.ply((int) (label.x() * 10), (int) ((80 - label.y()) * 10)),
          label.toString());
      assertTrue(label.radiusMm() >= 3);
      labelled.add(label.plyNumber());
    }
    assertEquals(Set.of(1, 2, 3, 4), labelled);
    assertFalse(
        PlyLabels.of(HandPlan.landscape(), 4.2).stream().anyMatch(l -> l.plyNumber() == 3),
        "the island has 4 mm only");
  }
}
