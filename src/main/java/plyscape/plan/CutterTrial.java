package plyscape.plan;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import plyscape.machine.Tool;

/**
 * A job planned with other cutters than it lists. Immutable.
 *
 * @param tools that there are
 * @param outcome what came of it, or empty when they can't do the job
 * @param refusal why they can't, "" when they can
 */
public record CutterTrial(List<Tool> tools, Optional<Outcome> outcome, String refusal) {

  /** Copies the list. */
  public CutterTrial {
    Objects.requireNonNull(outcome);
    Objects.requireNonNull(refusal);
    tools = List.copyOf(tools);
  }

  /**
   * What a plan comes to.
   *
   * @param used names of the cutters that it uses, in cutting order
   * @param cutS cutting time, s
   * @param changes of cutters, after the first of all is in
   * @param changesS what they take, s
   * @param plies how many show
   * @param lostMm2 what the map asks for and doesn't get: parts too narrow or too small for the
   *     cutters, and corners that none reaches
   */
  public record Outcome(
      List<String> used, double cutS, int changes, double changesS, int plies, double lostMm2) {

    /** Copies the list. */
    public Outcome {
      used = List.copyOf(used);
    }

    /** Cutting and changes, s. */
    public double totalS() {
      return cutS + changesS;
    }
  }
}
