package plyscape.planner;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import plyscape.grid.Box;
import plyscape.layup.Depths;
import plyscape.layup.PlyDepth;
import plyscape.machine.Machine;
import plyscape.machine.Tool;
import plyscape.region.Tiling;
import plyscape.toolpath.task.PocketLevel;

/**
 * A panel whose cutting is planned and timed.
 *
 * @param levels its pockets
 * @param tools the cutters
 * @param machine limits
 * @param carved the carved area
 */
record BenchPanel(List<PocketLevel> levels, List<Tool> tools, Machine machine, Box carved) {

  /** The panel that a tiling gives, its top ply left as it is. */
  static BenchPanel of(Tiling tiling, Depths depths, List<Tool> tools, Machine machine) {
    List<PocketLevel> levels = new ArrayList<>();
    MultiPolygon none = new GeometryFactory().createMultiPolygon();
    for (Map.Entry<Integer, MultiPolygon> pocket : tiling.pockets().entrySet()) {
      PlyDepth at = depths.of(pocket.getKey());
      if (pocket.getKey() > 1) {
        levels.add(
            new PocketLevel(
                pocket.getKey(),
                PocketLevel.asWritten(at.targetMm()),
                pocket.getValue(),
                tiling.exposed().getOrDefault(pocket.getKey(), none),
                at.ply().grainDeg()));
      }
    }
    return new BenchPanel(levels, tools, machine, tiling.carved());
  }
}
