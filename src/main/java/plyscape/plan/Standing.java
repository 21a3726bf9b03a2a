package plyscape.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.job.Job;
import plyscape.job.StandingSpec;
import plyscape.layup.Depths;
import plyscape.layup.PlyDepth;
import plyscape.region.StandingCure;
import plyscape.region.Tiling;
import plyscape.standing.StandingCheck;
import plyscape.standing.StandingRule;
import plyscape.standing.Terrace;
import plyscape.standing.WeakPart;
import plyscape.text.Template;

/**
 * Fins and posts that the cut would leave too thin. Immutable.
 *
 * @param weak the slenderest first
 * @param curedMm2 area that shows another ply so that there are fewer
 */
public record Standing(List<WeakPart> weak, double curedMm2) {

  /** Nothing weak, nothing cured. */
  public static final Standing NONE = new Standing(List.of(), 0);

  /** Of how many weak parts the warning gives the place. */
  private static final int LISTED = 10;

  /** Keeps its own list. */
  public Standing {
    weak = List.copyOf(weak);
  }

  /** Where they stand, mm2 in all. */
  public double areaMm2() {
    return weak.stream().mapToDouble(part -> part.area().getArea()).sum();
  }

  /** What the regions are made by, from a job's wishes. */
  public static StandingCure cure(Job job, Depths depths) {
    return new StandingCure(
        wood(job),
        terraces(depths),
        rule(job),
        switch (job.regions().standing().cure()) {
          case TELL -> StandingCure.Kind.TELL;
          case CUT -> StandingCure.Kind.CUT;
          case WIDEN -> StandingCure.Kind.WIDEN;
        });
  }

  /** Looks at finished regions, and warns of what is weak. */
  public static Standing of(Job job, Depths depths, Tiling tiling, Warnings warnings) {
    Standing standing = of(job, depths, tiling);
    standing.warn(job.regions().standing(), depths, warnings);
    return standing;
  }

  /** The same without a warning. */
  public static Standing of(Job job, Depths depths, Tiling tiling) {
    List<WeakPart> weak =
        new StandingCheck(
                wood(job), tiling.exposed(), tiling.pockets(), terraces(depths), rule(job))
            .weak();
    return new Standing(weak, tiling.curedMm2());
  }

  private void warn(StandingSpec spec, Depths depths, Warnings warnings) {
    if (!weak.isEmpty()) {
      String worst =
          weak.stream()
              .limit(LISTED)
              .map(
                  part ->
                      Template.fill(
                          "%.2f wide and %.2f tall at %.1f, %.1f (%s)",
                          part.widthMm(),
                          part.heightMm(),
                          part.at().x,
                          part.at().y,
                          depths.of(part.ply()).ply().name()))
              .collect(Collectors.joining("; "));
      warnings.add(
          "weak-standing",
          Template.fill(
              "%d standing part%s, %.1f mm2, may break in the cut or under sandpaper: narrower than"
                  + " %.2f mm or over %.1f times taller than wide; %s. mm: %s",
              weak.size(),
              weak.size() == 1 ? "" : "s",
              areaMm2(),
              spec.leastWidthMm(),
              spec.slenderness(),
              spec.cure() == StandingSpec.Cure.TELL
                  ? "standing: {cure: cut} gives them to the ply below, {cure: widen} widens them"
                  : "the cure couldn't help these",
              worst),
          "standing wood");
    }
    if (curedMm2 > 0) {
      warnings.add(
          "standing-cured",
          Template.fill(
              "%.1f mm2 show another ply, so that less standing wood is weak (cure: %s)",
              curedMm2, spec.cure().name().toLowerCase(Locale.ROOT)),
          "standing wood");
    }
  }

  private static StandingRule rule(Job job) {
    StandingSpec spec = job.regions().standing();
    return new StandingRule(spec.leastWidthMm(), spec.slenderness());
  }

  private static Box wood(Job job) {
    return new Box(0, 0, job.panel().widthMm(), job.panel().heightMm());
  }

  private static List<Terrace> terraces(Depths depths) {
    List<Terrace> out = new ArrayList<>();
    for (PlyDepth depth : depths) {
      boolean uncut = depth.ply().number() == 1 && depth.targetMm() == 0;
      out.add(new Terrace(depth.ply().number(), uncut ? 0 : depth.midMm(), depth.ply().grainDeg()));
    }
    return out;
  }
}
