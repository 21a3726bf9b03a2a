package plyscape.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import plyscape.plan.ToolProgram;

/**
 * The passes of one cutter at one depth, added up: a cutter comes back to a depth at each place.
 *
 * @param plyNumber ply whose pocket is cut
 * @param depthMm floor
 * @param stepdownFromMm depth of the wood before
 * @param cutMm way at feed
 * @param rapidMm way of rapids
 * @param runs how often the cutter comes to this depth
 * @param plunges ways down
 * @param timeS seconds
 */
record PassSum(
    int plyNumber,
    double depthMm,
    double stepdownFromMm,
    double cutMm,
    double rapidMm,
    int runs,
    int plunges,
    double timeS) {

  /** Sums of a program, in the order in which each depth is first cut. */
  static List<PassSum> of(ToolProgram program) {
    Map<List<Number>, PassSum> sums = new LinkedHashMap<>();
    for (ToolProgram.PassSummary pass : program.passes()) {
      PassSum one =
          new PassSum(
              pass.plyNumber(),
              pass.depthMm(),
              pass.stepdownFromMm(),
              pass.cutMm(),
              pass.rapidMm(),
              1,
              pass.plunges(),
              pass.timeS());
      sums.merge(
          List.of(pass.plyNumber(), pass.depthMm(), pass.stepdownFromMm()), one, PassSum::plus);
    }
    return new ArrayList<>(sums.values());
  }

  private PassSum plus(PassSum other) {
    return new PassSum(
        plyNumber,
        depthMm,
        stepdownFromMm,
        cutMm + other.cutMm,
        rapidMm + other.rapidMm,
        runs + other.runs,
        plunges + other.plunges,
        timeS + other.timeS);
  }
}
