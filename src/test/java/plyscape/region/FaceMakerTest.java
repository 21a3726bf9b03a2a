package plyscape.region;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import plyscape.bands.Bands;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.layup.Boundary;
import plyscape.layup.Depths;
import plyscape.layup.FaceWindow;
import plyscape.layup.Ply;
import plyscape.layup.PlyDepth;
import plyscape.terrain.Terrain;
import plyscape.zones.Zone;

/** Faces against closed forms: a slope rising to the east at 10 m a mm. */
class FaceMakerTest {

  private static final Box BOX = new Box(0, 0, 40, 20);
  private static final Terrain SLOPE = Ground.of(BOX, 80, 40, (x, y) -> 10 * x);

  /** Three plies of 1 mm; needs 0.2 at each edge, nothing sanded. */
  private static final Depths DEPTHS =
      new Depths(
          IntStream.rangeClosed(1, 3)
              .mapToObj(
                  i ->
                      new PlyDepth(
                          new Ply(i, "p" + i, 0, 1, 0, 0, ""),
                          new Boundary(i - 1, 0, 0.2),
                          new Boundary(i, 0, 0.2),
                          i - 0.5,
                          0))
              .toList());

  private static final List<FaceWindow> WINDOWS =
      List.of(new FaceWindow(0.5, 0.5), new FaceWindow(1.2, 1.8), new FaceWindow(2.2, 2.8));

  private final Warnings warnings = new Warnings();

  private FaceField faces(Bands bands, Zone... zones) {
    Tiling tiling =
        TilingBuilder.build(
            SLOPE, bands, List.of(zones), new TilingRules(3, 0, 0, null), new Warnings());
    FaceMaker.warnOfFlat(tiling, DEPTHS, WINDOWS, warnings);
    return FaceMaker.make(tiling, SLOPE, bands, DEPTHS, WINDOWS, 0.02);
  }

  private static double at(FaceField faces, int ply, double x, double y) {
    Coordinate place = new Coordinate(x, y);
    for (int i = 0; i < faces.polygons().size(); i++) {
      boolean here = faces.polygons().get(i).contains(Ground.FACTORY.createPoint(place));
      if (here) {
        assertEquals(ply, faces.faces().get(i).plyNumber());
        return faces.depthMm(i, x, y);
      }
    }
    throw new AssertionError("no region at " + place);
  }

  /** Bands from 400 to 200 m and from 200 m to the least: ends of a band at ends of the window. */
  @Test
  void band_goesEvenlyFromOneEndOfTheWindowToTheOther() {
    FaceField faces = faces(new Bands(List.of(2, 3), List.of(200.0)));
    double high = SLOPE.zmaxM();
    double low = SLOPE.zminM();
    for (double x = 1; x < 39; x += 0.7) {
      double z = 10 * x;
      if (Math.abs(x - 20) > 0.2) {
        double wanted =
            z > 200 ? 1.2 + (high - z) / (high - 200) * 0.6 : 2.2 + (200 - z) / (200 - low) * 0.6;
        assertEquals(wanted, at(faces, z > 200 ? 2 : 3, x, 7), 0.0001, "X" + x);
      }
    }
    assertTrue(faces.sculpted());
    assertEquals(1.2, faces.rangeMm(2).upperMm());
    assertEquals(2.8, faces.rangeMm(3).lowerMm());
  }

  /**
   * A zone over the band of another ply, 20 mm long: 200 m of the relief of about 400, at the
   * terrain's 1.2 mm for all of it, so 0.3 mm about the middle of 2.5; half of that length 0.15.
   */
  @Test
  void zone_followsTheGroundAboutItsTarget_noSteeperThanTheTerrain() {
    Bands bands = new Bands(List.of(2), List.of());
    for (double length : new double[] {20, 10}) {
      Geometry area = Ground.FACTORY.toGeometry(new Envelope(10, 10 + length, 5, 15));
      FaceField faces = faces(bands, Ground.zone("lake", 3, null, area));
      double gain = 0.6 / (SLOPE.zmaxM() - SLOPE.zminM());
      double half = gain * 10 * length / 2;
      assertEquals(2.5 + half, at(faces, 3, 10.2, 8), 0.01);
      assertEquals(2.5 - half, at(faces, 3, 9.8 + length, 8), 0.01);
      assertEquals(2.5, at(faces, 3, 10 + length / 2, 8), 0.01);
    }
  }

  @Test
  void smallZone_isFlatAtItsTarget() {
    Geometry area = Ground.FACTORY.toGeometry(new Envelope(10, 13, 5, 15));
    FaceField faces = faces(new Bands(List.of(2), List.of()), Ground.zone("house", 3, null, area));
    assertEquals(2.5, at(faces, 3, 10.1, 8));
    assertEquals(2.5, at(faces, 3, 12.9, 8));
  }

  @Test
  void plyWithoutAWindow_staysFlat_andIsTold() {
    FaceField faces = faces(new Bands(List.of(1, 2), List.of(200.0)));
    assertEquals(0.5, at(faces, 1, 30, 7));
    assertEquals(1, warnings.list().size());
    assertEquals("flat-face", warnings.list().get(0).code());
    assertFalse(faces.rangeMm(1).open());
  }

  /** Everywhere inside the window, whatever the ground; and a part keeps the whole's faces. */
  @Test
  void randomGround_staysInTheWindow_andGoesOnAcrossSeams() {
    for (long seed = 1; seed <= 12; seed++) {
      Terrain terrain = Ground.of(BOX, 100, 50, Ground.hills(seed, 15));
      Bands bands = Ground.equal(terrain, 3);
      Tiling tiling =
          TilingBuilder.build(
              terrain, bands, List.of(), new TilingRules(3, 1.0, 1, null), new Warnings());
      FaceField faces = FaceMaker.make(tiling, terrain, bands, DEPTHS, WINDOWS, 0.02);
      TileCutter cutter = new TileCutter(tiling, 20, 20, 2, 1);
      List<FaceField> parts = new ArrayList<>();
      for (int c = 0; c < 2; c++) {
        Tiling tile = cutter.tile(c, 0);
        parts.add(faces.part(cutter.part(c, 0), tile.carved(), tile));
      }
      plyscape.grid.CellFrame whole = new plyscape.grid.CellFrame(0, 0, 0.5, 0.5, 80, 40);
      plyscape.grid.CellFrame half = new plyscape.grid.CellFrame(0, 0, 0.5, 0.5, 40, 40);
      double[] all = faces.depthsMm(whole);
      double[] left = parts.get(0).depthsMm(half);
      double[] right = parts.get(1).depthsMm(half);
      for (int i = 0; i < all.length; i++) {
        int row = i / 80;
        int column = i % 80;
        double part = column < 40 ? left[row * 40 + column] : right[row * 40 + column - 40];
        assertEquals(all[i], part, 1e-9, "seed " + seed + " cell " + column + " " + row);
        double depth = all[i];
        assertTrue(
            WINDOWS.stream()
                .anyMatch(w -> depth >= w.upperMm() - 1e-9 && depth <= w.lowerMm() + 1e-9),
            "seed " + seed + ": " + depth);
      }
    }
  }
}
