package plyscape.terrain;

import java.util.Locale;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.job.TerrainOptions;
import plyscape.job.TerrainSpec;
import plyscape.terrain.raster.Affine;
import plyscape.terrain.raster.Raster;
import plyscape.text.Numbers;
import plyscape.text.Template;

/** Looks whether elevations and ground fit together, and warns of units that are likely wrong. */
final class ReliefCheck {

  /**
   * Relief over the shorter side of the ground from which a landscape isn't believed; the steepest
   * faces have 0.6.
   */
  private static final double STEEPEST = 0.8;

  /**
   * A little above the highest ground there is (8849 m), and above the commonest mark of a void,
   * -9999: deeper ground is only in a few trenches.
   */
  private static final double HIGHEST_M = 8900;

  private static final double DEEPEST_M = -9990;

  /** Six arc-minutes; coarser rasters show no landscape on a panel. */
  private static final double LARGEST_CELL_DEGREES = 0.1;

  /** Water lies in this lowest share of the relief, which is looked at in so many steps. */
  private static final double LOW_SHARE = 0.1;

  private static final int LOW_STEPS = 100_000;

  /** Less of one elevation isn't worth a word. */
  private static final double SEA_SHARE = 0.1;

  /** Of coordinates that could be degrees, and aren't. */
  private static final String TAKEN_AS_METRES =
      "the raster has no CRS; its coordinates are taken as metres (terrain.crs tells another)";

  private ReliefCheck() {}

  /** Whether it is {@link #check} that warns of coordinates without a CRS: they may be degrees. */
  static boolean likeDegrees(Raster raster) {
    return degrees(raster);
  }

  /** Adds warnings; coordinates without a CRS that can only be degrees are a fault. */
  static void check(Terrain terrain, TerrainSpec spec, Raster raster, Warnings warnings) {
    Box ground = terrain.frame().ground();
    double relief = terrain.zmaxM() - terrain.zminM();
    double side = Math.min(ground.width(), ground.height()) * terrain.frame().metresPerUnit();
    if (terrain.frame().crs().isEmpty() && degrees(raster)) {
      if (relief > side) {
        throw likeDegrees(spec, ground);
      }
      warnings.add("no-crs", TAKEN_AS_METRES, raster.name());
    }
    if (terrain.zmaxM() > HIGHEST_M || terrain.zminM() < DEEPEST_M) {
      warnings.add(
          "elevation-range",
          Template.fill(
              "elevations run from %.1f to %.1f m, beyond any ground on Earth; if they are feet or"
                  + " centimetres, set terrain.unit; if the file marks voids by a number, set"
                  + " terrain.nodata",
              terrain.zminM(), terrain.zmaxM()),
          terrain.file());
    } else if (relief > STEEPEST * side) {
      warnings.add("steep-relief", steep(relief, side, raster), terrain.file());
    }
    hintAtSea(terrain, spec, warnings);
    hintAtUnit(terrain, spec, raster, warnings);
  }

  private static InputFault likeDegrees(TerrainSpec spec, Box ground) {
    return new InputFault(
        Place.file(spec.file().toString()),
        String.format(
            Locale.ROOT,
            "it has no CRS, and its coordinates (%.6g to %.6g, %.6g to %.6g) look like degrees",
            ground.minX(),
            ground.maxX(),
            ground.minY(),
            ground.maxY()),
        "set terrain.crs: EPSG:4326, or the metric CRS that it is in");
  }

  private static String steep(double relief, double side, Raster raster) {
    return Template.fill(
        "the relief of %.1f m is %s times the ground's shorter side of %.1f m; %s",
        relief,
        Numbers.fixed(Math.min(1e9, relief / side), relief < 10 * side ? 1 : 0),
        side,
        raster.head().placed()
            ? "if elevations aren't in metres, set terrain.unit"
            : "the file doesn't say how large its cells are, so 1 m is taken: set terrain.cell to"
                + " the metres of one");
  }

  /** Where the map's unit is a foot and nothing says that of the elevations. */
  private static void hintAtUnit(
      Terrain terrain, TerrainSpec spec, Raster raster, Warnings warnings) {
    boolean given = spec.options().unit() != TerrainOptions.Unit.FROM_FILE || raster.unitStated();
    double unit = raster.crs().metresPerUnit();
    if (!given && Math.abs(unit - 0.3048) < 1e-4) {
      warnings.add(
          "map-unit",
          String.format(
              Locale.ROOT,
              "the map's unit is %.7g m, but elevations are taken as metres; if they are feet, set"
                  + " terrain.unit: ft (or us-ft)",
              unit),
          terrain.file());
    }
  }

  /** Hints at water: much ground of one elevation near the lowest, and no sea set. */
  private static void hintAtSea(Terrain terrain, TerrainSpec spec, Warnings warnings) {
    double relief = terrain.zmaxM() - terrain.zminM();
    if (spec.options().cover().sea() != null || !(relief > 0)) {
      return;
    }
    int[] counts = new int[LOW_STEPS + 1];
    CellFrame cells = terrain.elevationM().frame();
    int all = 0;
    int most = 0;
    for (int i = 0; i < cells.size(); i++) {
      int column = i % cells.columns();
      int row = i / cells.columns();
      if (terrain.frame().panel().contains(cells.centreX(column), cells.centreY(row))) {
        all++;
        double above = (terrain.elevationM().at(column, row) - terrain.zminM()) / relief;
        if (above >= 0 && above < LOW_SHARE) {
          int step = (int) (above / LOW_SHARE * LOW_STEPS);
          most = ++counts[step] > counts[most] ? step : most;
        }
      }
    }
    double share = counts[most] / (double) Math.max(1, all);
    if (share >= SEA_SHARE) {
      double level = terrain.zminM() + relief * LOW_SHARE * (most + 0.5) / LOW_STEPS;
      String shown = Numbers.fixed(Math.rint(10 * level) / 10 + 0.0, 1);
      warnings.add(
          "flat-lowest",
          Template.fill(
              "%.0f %% of the ground lies at one elevation, %s m, near its lowest: if that is"
                  + " water, set terrain.sea_level: %s and terrain.sea_ply",
              100 * share, shown, shown),
          terrain.file());
    }
  }

  /**
   * Whether coordinates lie where degrees do, on cells as small as rasters in degrees have. Ground
   * that begins at 0, 0 is a local plane, whatever its size.
   */
  private static boolean degrees(Raster raster) {
    Affine a = raster.toGround();
    double x0 = Math.min(a.x0(), a.x(raster.columns(), raster.rows()));
    double y0 = Math.min(a.y0(), a.y(raster.columns(), raster.rows()));
    double x1 = Math.max(a.x0(), a.x(raster.columns(), raster.rows()));
    double y1 = Math.max(a.y0(), a.y(raster.columns(), raster.rows()));
    boolean local = Math.abs(x0) + Math.abs(y0) < 1e-9;
    boolean small = Math.abs(a.xCol()) <= LARGEST_CELL_DEGREES;
    return small && !local && x0 >= -180.1 && x1 <= 360.1 && y0 >= -90.1 && y1 <= 90.1;
  }
}
