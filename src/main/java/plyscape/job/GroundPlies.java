package plyscape.job;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import plyscape.fault.Warnings;
import plyscape.layup.CutAllowance;
import plyscape.layup.DepthModel;
import plyscape.layup.Depths;
import plyscape.layup.FloorCheck;
import plyscape.layup.Layup;
import plyscape.layup.PlyDepth;

/**
 * The plies that the terrain takes when a job doesn't list any: all that, cut to their depth, leave
 * the least floor. Immutable.
 *
 * @param all every ply's number, top to bottom
 * @param leftOut those of them too near to the panel's bottom
 */
record GroundPlies(List<Integer> all, List<PlyDepth> leftOut) {

  /** Of a layup. */
  static GroundPlies of(Layup layup, CutAllowance allowance, Job.PanelSpec panel) {
    Depths depths = DepthModel.depths(layup, allowance, true);
    List<PlyDepth> low =
        depths.stream()
            .filter(
                ply ->
                    !FloorCheck.holds(
                        depths, ply.ply().number(), allowance, panel.widthMm(), panel.heightMm()))
            .toList();
    boolean none = low.size() == depths.plies();
    return new GroundPlies(numbers(depths.plies()), none ? List.of() : low);
  }

  /** Of no layup: no ply is known. */
  static GroundPlies none() {
    return new GroundPlies(List.of(), List.of());
  }

  private static List<Integer> numbers(int plies) {
    return IntStream.rangeClosed(1, plies).boxed().toList();
  }

  /** Those that leave the floor; a warning {@code floor-plies} says which don't. */
  List<Integer> usual(Warnings warnings) {
    if (leftOut.isEmpty()) {
      return all;
    }
    String names = leftOut.stream().map(ply -> ply.ply().name()).collect(Collectors.joining(", "));
    warnings.add(
        "floor-plies",
        String.format(
            Locale.ROOT,
            "no ground goes to %s: too little wood would be left under the cut, see minimum_floor;"
                + " terrain.plies may list the plies to use",
            names),
        "terrain.plies");
    List<Integer> low = leftOut.stream().map(ply -> ply.ply().number()).toList();
    return all.stream().filter(number -> !low.contains(number)).toList();
  }
}
