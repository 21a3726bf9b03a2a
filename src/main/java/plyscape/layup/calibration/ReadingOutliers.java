package plyscape.layup.calibration;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import plyscape.layup.statistics.ColourRisk;
import plyscape.layup.statistics.NormalTail;
import plyscape.layup.statistics.StudentTail;

/**
 * Readings of the same edge that don't fit the others, found one after the other by their deleted
 * residual: how far a reading lies from the mean of the rest, in deviations estimated from the rest
 * (or stated). Among normal errors the whole search names a good reading once in a thousand files.
 */
final class ReadingOutliers {

  private static final double FALSE_ALARM = 0.001;

  private ReadingOutliers() {}

  /**
   * A reading set aside, and by how much it is off the mean of the others.
   *
   * @param offMm signed, positive when too deep
   */
  record Outlier(Reading reading, double offMm) {}

  /**
   * Takes the outliers out of the list.
   *
   * @param readings changed: outliers are removed
   * @param stated whether every reading's tolerance is stated; else scatter is taken from the
   *     readings
   * @param expectedMm expected depth of each interface, which tells the odd one of two
   */
  static List<Outlier> remove(List<Reading> readings, boolean stated, double[] expectedMm) {
    List<Outlier> found = new ArrayList<>();
    for (Outlier next = worst(readings, stated, expectedMm);
        next != null;
        next = worst(readings, stated, expectedMm)) {
      found.add(next);
      readings.remove(next.reading());
    }
    return found;
  }

  private static Outlier worst(List<Reading> readings, boolean stated, double[] expectedMm) {
    Scatter all = Scatter.of(readings, stated);
    Outlier worst = null;
    double worstChance = FALSE_ALARM / readings.size();
    double worstFar = 0;
    for (Reading r : readings) {
      Scatter.Cell cell = all.cells().get(r.edge());
      if (cell.count() < 2) {
        continue;
      }
      double weight = all.weight(r);
      double others = cell.weight() - weight;
      double off = r.depthMm() - (cell.mean() * cell.weight() - weight * r.depthMm()) / others;
      double square = off * off / (1 / weight + 1 / others);
      double chance;
      if (stated) {
        chance = 2 * NormalTail.above(Math.sqrt(square));
      } else if (all.degrees() < 2) {
        continue;
      } else {
        double rest = Math.max(0, all.squares() - square) / (all.degrees() - 1);
        chance =
            1 - StudentTail.within(rest > 0 ? Math.sqrt(square / rest) : 1e9, all.degrees() - 1);
      }
      double far = Math.abs(r.depthMm() - expectedMm[r.interfaceIndex()]);
      boolean same = worst != null && Math.abs(chance - worstChance) <= 1e-12 && far > worstFar;
      if (off != 0 && (chance < worstChance - 1e-12 || same)) {
        worst = new Outlier(r, off);
        worstChance = chance;
        worstFar = far;
      }
    }
    return worst;
  }

  /**
   * Means and scatter of readings of the same edge.
   *
   * @param stated whether weights are inverse variances; else each is 1
   * @param cells edge to its cell, in the order of the readings
   * @param degrees degrees of freedom left for the scatter
   * @param squares weighted sum of squared residuals
   */
  record Scatter(boolean stated, Map<Reading.ReadEdge, Cell> cells, int degrees, double squares) {

    /** Readings of one edge: how many, the sum of their weights, their weighted mean. */
    record Cell(int count, double weight, double mean) {}

    static Scatter of(List<Reading> readings, boolean stated) {
      Map<Reading.ReadEdge, Cell> cells = new LinkedHashMap<>();
      for (Reading r : readings) {
        double w = weight(r, stated);
        Cell c = cells.getOrDefault(r.edge(), new Cell(0, 0, 0));
        double sum = c.weight() + w;
        cells.put(
            r.edge(), new Cell(c.count() + 1, sum, c.mean() + (r.depthMm() - c.mean()) * w / sum));
      }
      double squares = 0;
      for (Reading r : readings) {
        double off = r.depthMm() - cells.get(r.edge()).mean();
        squares += weight(r, stated) * off * off;
      }
      return new Scatter(stated, cells, readings.size() - cells.size(), squares);
    }

    double weight(Reading r) {
      return weight(r, stated);
    }

    private static double weight(Reading r, boolean stated) {
      double sigma = r.toleranceMm() / ColourRisk.SIGMAS;
      return stated ? 1 / (sigma * sigma) : 1;
    }
  }
}
