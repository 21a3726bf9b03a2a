package plyscape.zones;

import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.GroundFrame;
import plyscape.job.GroundCover;
import plyscape.job.ZoneSpec;
import plyscape.terrain.Terrain;
import plyscape.terrain.VoidCells;
import plyscape.zones.map.MapShapes;

/**
 * The zone of everything outside a polygon along which the terrain is cut: the last of all zones,
 * over the others.
 */
public final class OutsideZone {

  private static final String NAME = "outside";

  private OutsideZone() {}

  /**
   * The terrain with only what lies inside the outline counted, voids too.
   *
   * @param outside what {@link #of} gave
   */
  public static Terrain inside(Zone outside, Terrain terrain) {
    VoidCells voids = terrain.voids();
    Terrain counted = terrain.within(inside(outside, terrain.elevationM().frame()));
    return voids.mask() == null
        ? counted
        : counted.with(voids.within(inside(outside, voids.frame()), terrain.frame().panel()));
  }

  /**
   * Which cells lie inside the outline, by their centres: only they count for the terrain's range.
   *
   * @param outside what {@link #of} gave
   * @param cells frame in panel mm
   * @return row by row from the south
   */
  static boolean[] inside(Zone outside, CellFrame cells) {
    boolean[] out = new boolean[cells.size()];
    if (outside.area().isEmpty()) {
      Arrays.fill(out, true);
      return out;
    }
    var locator = new IndexedPointInAreaLocator(outside.area());
    Coordinate centre = new Coordinate();
    for (int i = 0; i < out.length; i++) {
      centre.x = cells.centreX(i % cells.columns());
      centre.y = cells.centreY(i / cells.columns());
      out[i] = locator.locate(centre) != Location.INTERIOR;
    }
    return out;
  }

  /**
   * The carved area less the outline's polygons.
   *
   * @throws JobFault if the outline has no area on the panel
   */
  public static Zone of(GroundCover.Outline outline, GroundFrame frame, Warnings warnings) {
    ZoneSpec spec = ZoneSpec.areas(NAME, outline.map(), outline.outsidePlyNumber());
    Zone inside = ZoneReader.read(List.of(spec), frame, warnings).get(0);
    if (inside.area().isEmpty()) {
      throw new JobFault(
          "terrain.outline picks no polygon on the carved area",
          "check its file, where and the terrain's crop");
    }
    Box box = frame.panel();
    Geometry carved =
        MapShapes.FACTORY.toGeometry(new Envelope(box.minX(), box.maxX(), box.minY(), box.maxY()));
    Geometry outside = OverlayNGRobust.overlay(carved, inside.area(), OverlayNG.DIFFERENCE);
    return new Zone(spec, outside, inside.features(), inside.skipped());
  }
}
