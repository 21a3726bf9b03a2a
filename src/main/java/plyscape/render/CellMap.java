package plyscape.render;

import java.io.ByteArrayOutputStream;
import java.util.Base64;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.PolygonExtracter;
import plyscape.job.Job;
import plyscape.plan.Landscape;
import plyscape.zones.Zone;

/**
 * The panel as square cells, rows from the north: which ply shows at a cell's centre (0 in the
 * border), and which zone lies on top there (1 for the first of the job, 0 for none). For pages and
 * terminals; exact at the centres, so edges are off by half a cell.
 */
public final class CellMap {

  private final int columns;
  private final int rows;
  private final double cellMm;
  private final short[] plies;
  private final short[] zones;

  private CellMap(PlyRaster raster, short[] zones) {
    columns = raster.columns();
    rows = raster.rows();
    cellMm = raster.cellMm();
    plies = raster.plies();
    this.zones = zones;
  }

  /** A map with so many cells on the panel's longer side. */
  public static CellMap of(Landscape plan, int longestCells) {
    Job.PanelSpec panel = plan.job().panel();
    double cell = Math.max(panel.widthMm(), panel.heightMm()) / longestCells;
    PlyRaster raster = PlyRaster.of(plan.tiling(), panel.widthMm(), panel.heightMm(), cell);
    short[] zones = new short[raster.plies().length];
    PictureCells cells =
        new PictureCells(raster.columns(), raster.rows(), cell, 0, panel.heightMm());
    for (int i = 0; i < plan.zones().size(); i++) {
      Zone zone = plan.zones().get(i);
      cells.fill(multi(zone.area()), (short) (i + 1), zones);
    }
    return new CellMap(raster, zones);
  }

  /** Cells from west to east. */
  public int columns() {
    return columns;
  }

  /** Cells from north to south. */
  public int rows() {
    return rows;
  }

  /** Side of a cell, mm. */
  public double cellMm() {
    return cellMm;
  }

  /** Ply number of a cell, 0 for the border. */
  public int ply(int column, int row) {
    return plies[row * columns + column];
  }

  /** Zone of a cell, counted from 1 in the job's order, 0 for none. */
  public int zone(int column, int row) {
    return zones[row * columns + column];
  }

  /** The plies as runs, see {@link #runs}. */
  public String plyRuns() {
    return runs(plies);
  }

  /** The zones as runs, see {@link #runs}. */
  public String zoneRuns() {
    return runs(zones);
  }

  /** Base64 of pairs (value, how often), each a base-128 number with its low end first. */
  public static String runs(short[] values) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (int from = 0, at = 1; at <= values.length; at++) {
      if (at == values.length || values[at] != values[from]) {
        number(out, values[from]);
        number(out, at - from);
        from = at;
      }
    }
    return Base64.getEncoder().encodeToString(out.toByteArray());
  }

  private static void number(ByteArrayOutputStream out, int value) {
    int rest = value;
    for (; rest > 127; rest >>= 7) {
      out.write(rest & 127 | 128);
    }
    out.write(rest);
  }

  private static MultiPolygon multi(Geometry area) {
    List<?> polygons = PolygonExtracter.getPolygons(area);
    return area.getFactory().createMultiPolygon(polygons.toArray(new Polygon[0]));
  }
}
