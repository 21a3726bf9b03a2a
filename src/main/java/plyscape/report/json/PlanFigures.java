package plyscape.report.json;

import java.util.List;
import plyscape.grid.Box;

/**
 * What {@code verify} needs of a {@code plan.json}. Immutable.
 *
 * @param version that wrote it
 * @param widthMm panel's X size
 * @param heightMm panel's Y size
 * @param thicknessMm of the pressed panel
 * @param flatnessMm plus or minus, how far its top face is from flat; 0 where the plan doesn't say
 * @param carved the carved area, panel mm
 * @param plies top to bottom
 * @param tools as listed in the job
 * @param passes in cutting order
 * @param uncutMm2 what the plan itself said it would leave uncut, mm2
 * @param cutouts where pins and outline are cut
 * @param spinUpS what the spindle takes to its speed; 0 where the plan doesn't say
 * @param bend how the panel lies; null for one that is flat and the same everywhere
 * @param faces name of the file with sculpted faces, relative to the plan's; null when all are flat
 */
public record PlanFigures(
    String version,
    double widthMm,
    double heightMm,
    double thicknessMm,
    double flatnessMm,
    Box carved,
    List<PlyFigures> plies,
    List<ToolFigures> tools,
    List<PassFigures> passes,
    double uncutMm2,
    List<CutoutFigures> cutouts,
    double spinUpS,
    BendFigures bend,
    String faces) {

  /**
   * How the panel lies.
   *
   * @param readings x, y and height over a flat panel's top face each, mm; empty for a flat face
   * @param targets of each ply that is cut, top to bottom: target depth in the flat plan, at the
   *     panel's lower left corner, change a mm of X, of Y, a mm squared of both
   * @param bottomPlane the panel's thickness, likewise, or null where a plan doesn't say
   */
  public record BendFigures(
      List<double[]> readings, List<double[]> targets, double[] bottomPlane) {}

  /** The same for a panel that is flat and the same everywhere. */
  public PlanFigures flat() {
    return new PlanFigures(
        version,
        widthMm,
        heightMm,
        thicknessMm,
        flatnessMm,
        carved,
        plies,
        tools,
        passes,
        uncutMm2,
        cutouts,
        spinUpS,
        null,
        faces);
  }

  /**
   * Where pins or outline are cut: depths in mm, outlines x, y, x, y ..., even-odd; depth by place
   * as at the panel's lower left corner, its change a mm of X and of Y, or null.
   */
  public record CutoutFigures(
      double depthMm, double slackMm, List<double[]> rings, double[] plane) {}

  /** How far below the panel the outline goes, mm. */
  public double throughMm() {
    return cutouts.stream().mapToDouble(c -> c.depthMm() - thicknessMm).reduce(0, Math::max);
  }

  /** A ply: depths in mm below the top face; area where it shows, mm2. */
  public record PlyFigures(
      int number,
      String name,
      String colour,
      double topMm,
      double bottomMm,
      double targetMm,
      double areaMm2) {}

  /**
   * A tool.
   *
   * @param shape form of its end in lower case, "" where the plan doesn't say
   * @param cutting how it is run; null where the plan doesn't say
   */
  public record ToolFigures(String name, double diameterMm, String shape, RunFigures cutting) {}

  /** How a tool is run: turns a minute, feeds in mm/min, stepdown in mm. */
  public record RunFigures(
      double rpm, double feed, double thinFeed, double plunge, double stepdownMm) {}

  /** A pass: which file, which tool by name, floor depth in mm. */
  public record PassFigures(String file, String tool, double depthMm) {}

  /** File names of the programs, each once, in cutting order. */
  public List<String> files() {
    return passes.stream().map(PassFigures::file).distinct().toList();
  }
}
