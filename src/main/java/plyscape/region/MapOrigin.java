package plyscape.region;

import java.util.List;
import plyscape.bands.Bands;
import plyscape.planar.PlanarMap;
import plyscape.zones.Zone;

/** What the terrain and the zones alone give, by winding vector. */
final class MapOrigin {

  /** Name of what no zone covers. */
  static final String TERRAIN = "terrain";

  private final Bands bands;
  private final List<Zone> zones;
  private final int plyCount;

  MapOrigin(Bands bands, List<Zone> zones, int plyCount) {
    this.bands = bands;
    this.zones = zones;
    this.plyCount = plyCount;
  }

  /**
   * What a face belongs to: the number, from 1, of the last zone around it, or 0 for the terrain.
   * Components as {@link TilingBuilder} has them.
   */
  int source(PlanarMap map, int face) {
    int source = 0;
    for (int z = zones.size(); z > 0 && source == 0; z--) {
      source = map.winding(face, z) > 0 ? z : 0;
    }
    return source;
  }

  /** The ply that a face of a source would show. */
  int ply(PlanarMap map, int face, int source) {
    int breaks = bands.breaksM().size();
    int level = Math.min(Math.max(breaks - map.winding(face, 0), 0), breaks);
    return ply(source, bands.plyNumbers().get(level));
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
    return source == 0 ? TERRAIN : zones.get(source - 1).spec().name();
  }
}
