package plyscape.region;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.algorithm.locate.PointOnGeometryLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Location;
import plyscape.bands.Bands;
import plyscape.planar.PlanarMap;
import plyscape.terrain.Terrain;
import plyscape.zones.Zone;

/** What the terrain and the zones alone give: by winding vector, and for reports by place. */
final class MapOrigin {

  private final Terrain terrain;
  private final Bands bands;
  private final List<Zone> zones;
  private final int plyCount;
  private final List<PointOnGeometryLocator> locators = new ArrayList<>();

  MapOrigin(Terrain terrain, Bands bands, List<Zone> zones, int plyCount) {
    this.terrain = terrain;
    this.bands = bands;
    this.zones = zones;
    this.plyCount = plyCount;
    for (Zone zone : zones) {
      locators.add(zone.area().isEmpty() ? null : new IndexedPointInAreaLocator(zone.area()));
    }
  }

  /**
   * The piece that a face is: the last zone around it decides, else the terrain. Components as
   * {@link TilingBuilder} has them.
   */
  Piece ofFace(PlanarMap map, int face, long area2) {
    int breaks = bands.breaksM().size();
    int level = Math.min(Math.max(breaks - map.winding(face, 0), 0), breaks);
    int terrainPly = bands.plyNumbers().get(level);
    int source = 0;
    for (int z = zones.size(); z > 0 && source == 0; z--) {
      source = map.winding(face, z) > 0 ? z : 0;
    }
    return new Piece(source, ply(source, terrainPly), area2, null);
  }

  /** The piece at a place, mm. */
  Piece at(Coordinate place, long area2) {
    int source = 0;
    for (int z = zones.size(); z > 0 && source == 0; z--) {
      PointOnGeometryLocator locator = locators.get(z - 1);
      source = locator != null && locator.locate(place) != Location.EXTERIOR ? z : 0;
    }
    int terrainPly = bands.plyAt(terrain.elevationM().bilinear(place.x, place.y));
    return new Piece(source, ply(source, terrainPly), area2, null);
  }

  private int ply(int source, int terrainPly) {
    if (source == 0) {
      return terrainPly;
    }
    Integer given = zones.get(source - 1).spec().plyNumber();
    return given != null
        ? given
        : Math.min(plyCount, terrainPly + zones.get(source - 1).spec().sink());
  }

  /** Name of a source for reports. */
  String name(int source) {
    return source == 0 ? "terrain" : zones.get(source - 1).spec().name();
  }
}
