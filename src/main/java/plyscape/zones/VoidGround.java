package plyscape.zones;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.ClassGrid;
import plyscape.grid.GroundFrame;
import plyscape.job.GroundCover.Voids;
import plyscape.job.MapPick;
import plyscape.job.ZoneSpec;
import plyscape.terrain.Terrain;
import plyscape.terrain.VoidCells;
import plyscape.zones.map.MapFeature;
import plyscape.zones.map.MapFile;

/**
 * Ground without a value as a zone of its own, under all others: it takes a ply instead of being
 * filled. Its edges are those of the raster's cells, smooth where cells are coarse on the panel.
 */
public final class VoidGround {

  private static final String NAME = "no value";

  /** The ply of ground that is left: the top one, which isn't cut unless the job says so. */
  private static final int TOP = 1;

  private static final double VOID = 1;

  private VoidGround() {}

  /**
   * The zone; empty when voids are filled or there are none.
   *
   * @param file the terrain's, for the zone's settings
   */
  public static Optional<Zone> zone(Terrain terrain, Voids rule, Path file) {
    boolean zoned = rule.rule() == Voids.Rule.LEAVE || rule.rule() == Voids.Rule.PLY;
    if (!zoned || terrain.voids().mask() == null) {
      return Optional.empty();
    }
    int ply = rule.rule() == Voids.Rule.LEAVE ? TOP : rule.plyNumber();
    ZoneSpec spec = ZoneSpec.areas(NAME, new MapPick(file, "", new TreeMap<>()), ply);
    // The mask lies on the panel, so the panel is its ground, however the terrain's is turned.
    Box panel = terrain.frame().panel();
    GroundFrame frame = new GroundFrame("", panel, panel, 1);
    Warnings unsaid = new Warnings(); // what is said of maps without a CRS isn't said of the panel
    ClassGrid grid = grid(terrain.voids(), terrain.file());
    MapFile map = ClassMap.of(grid, List.of(VOID), frame, ClassBorders::new, unsaid);
    ZoneShape shape = new ZoneShape(spec, frame, 0);
    for (MapFeature feature : map.features()) {
      shape.add(feature, GroundMap.of(map, frame, unsaid));
    }
    return Optional.of(shape.zone());
  }

  /** Voids as classes on the panel, row 0 the southernmost. */
  private static ClassGrid grid(VoidCells voids, String name) {
    CellFrame cells = voids.frame();
    double[] values = new double[voids.mask().length];
    for (int i = 0; i < values.length; i++) {
      values[i] = voids.mask()[i] ? VOID : 0;
    }
    double[] toPanel = {cells.minX(), cells.cellX(), 0, cells.minY(), 0, cells.cellY()};
    return new ClassGrid(name, "", toPanel, cells.columns(), cells.rows(), values);
  }

  /** Which of the terrain's cells have their centres on ground with a value. */
  public static boolean[] known(Terrain terrain) {
    CellFrame cells = terrain.elevationM().frame();
    boolean[] out = new boolean[cells.size()];
    for (int i = 0; i < out.length; i++) {
      int column = i % cells.columns();
      int row = i / cells.columns();
      out[i] =
          terrain.counts(column, row)
              && !terrain.voids().at(cells.centreX(column), cells.centreY(row));
    }
    return out;
  }
}
