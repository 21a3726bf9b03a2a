package plyscape.machine;

import java.util.Objects;

/**
 * A cutter and how it may be run. Immutable; its parts check themselves.
 *
 * @param name unique among the tools
 * @param form what it looks like
 * @param cutting how it may be run
 * @param clamping how it is held
 */
public record Tool(String name, Form form, CuttingData cutting, Clamping clamping) {

  /** What a tool of a job is that doesn't say otherwise; the only place of these defaults. */
  public static final Tool USUAL =
      new Tool(
          "end mill 3",
          Form.of(Shape.FLAT, 3, 12),
          new CuttingData(16_000, 1800, 500, 2.0, 0.45),
          Clamping.UNKNOWN);

  /** Which way the flutes carry the chips; for people only, paths are the same. */
  public enum Spiral {
    UNSAID,
    UP_CUT,
    DOWN_CUT
  }

  /** Form of a cutter's end. */
  public enum Shape {
    FLAT,
    BALL,
    TAPERED
  }

  /** Checks that no part is missing. */
  public Tool {
    Objects.requireNonNull(name);
    Objects.requireNonNull(form);
    Objects.requireNonNull(cutting);
    Objects.requireNonNull(clamping);
  }

  /** A cutter of which no more than the cutting part is known. */
  public Tool(String name, Form form, CuttingData cutting) {
    this(name, form, cutting, Clamping.UNKNOWN);
  }

  /** The same cutter by another name. */
  public Tool named(String other) {
    return new Tool(other, form, cutting, clamping);
  }

  /** The same cutter, run otherwise. */
  public Tool with(CuttingData other) {
    return new Tool(name, form, other, clamping);
  }

  /**
   * What the way its flutes wind means for thin plies, in a few words, or nothing when it isn't
   * said. Common practice, not from a standard.
   */
  public String spiralNote() {
    return switch (spiral()) {
      case UNSAID -> "";
      case UP_CUT -> "up-cut: clears chips, but lifts the fibres of the top ply at its edges";
      case DOWN_CUT ->
          "down-cut: presses the fibres down for clean edges, but packs chips in slots";
    };
  }

  /** Half the diameter. */
  public double radiusMm() {
    return form.diameterMm() / 2;
  }

  /** Greatest width of cut at full feed. */
  public double stepoverMm() {
    return cutting.stepover() * form.diameterMm();
  }

  /** Form of the end. */
  public Shape shape() {
    return form.shape();
  }

  /** Cutting diameter. */
  public double diameterMm() {
    return form.diameterMm();
  }

  /** Cutting length. */
  public double fluteLengthMm() {
    return form.fluteLengthMm();
  }

  /** Count of flutes. */
  public int flutes() {
    return form.flutes();
  }

  /** Diameter of the ball at a tapered cutter's tip. */
  public double tipDiameterMm() {
    return form.tipDiameterMm();
  }

  /** Angle between a tapered cutter's side and its axis. */
  public double taperDegrees() {
    return form.taperDegrees();
  }

  /** Which way its flutes wind. */
  public Spiral spiral() {
    return form.spiral();
  }

  /** Spindle speed. */
  public double rpm() {
    return cutting.rpm();
  }

  /** Feed in the cut. */
  public double feedMmPerMin() {
    return cutting.feedMmPerMin();
  }

  /** Feed straight down. */
  public double plungeMmPerMin() {
    return cutting.plungeMmPerMin();
  }

  /** Greatest depth taken at once. */
  public double stepdownMm() {
    return cutting.stepdownMm();
  }

  /** Greatest width of cut at full feed, as a fraction of the diameter. */
  public double stepover() {
    return cutting.stepover();
  }

  /** Greatest feed where the bite is thin: the feed where no other was given. */
  public double thinFeedMmPerMin() {
    return Math.max(cutting.feedMmPerMin(), cutting.thinFeedMmPerMin());
  }

  /** Diameter of the plain part above the flutes. */
  public double shankDiameterMm() {
    return clamping.shankDiameterMm();
  }

  /** From the tip to the holder's face. */
  public double stickoutMm() {
    return clamping.stickoutMm();
  }

  /** Diameter of the holder at its face. */
  public double holderDiameterMm() {
    return clamping.holderDiameterMm();
  }
}
