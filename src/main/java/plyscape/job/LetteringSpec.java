package plyscape.job;

import java.util.List;
import plyscape.fault.Place;

/**
 * Letters and signs cut into the landscape, over all zones. Immutable.
 *
 * @param texts lines of text at places of the panel
 * @param names of places of a map
 * @param scaleBar or null
 * @param north the arrow, or null
 */
public record LetteringSpec(List<Text> texts, List<Names> names, ScaleBar scaleBar, North north) {

  /** No letters. */
  public static final LetteringSpec NONE = new LetteringSpec(List.of(), List.of(), null, null);

  /** Takes copies. */
  public LetteringSpec {
    texts = List.copyOf(texts);
    names = List.copyOf(names);
  }

  /** Whether there is nothing to cut. */
  public boolean isEmpty() {
    return texts.isEmpty() && names.isEmpty() && scaleBar == null && north == null;
  }

  /** Which end of a line stands at its place. */
  public enum End {
    LEFT,
    CENTRE,
    RIGHT
  }

  /** A place on the panel and where the job says so; mm from the lower left corner. */
  public record Spot(double x, double y, Place place) {}

  /**
   * One line of text.
   *
   * @param at of the baseline at the end that {@code align} names
   * @param angleDegrees counter-clockwise
   */
  public record Text(String text, Spot at, End align, double angleDegrees, LetterStyle style) {}

  /**
   * Names from a map.
   *
   * @param property that holds the name
   * @param offsetMm kept between a place and its name
   */
  public record Names(
      String name, MapPick map, String property, double offsetMm, LetterStyle style) {}

  /**
   * A bar as long as a length on the ground.
   *
   * @param at its lower left corner
   */
  public record ScaleBar(Spot at, double lengthM, LetterStyle style) {}

  /**
   * An arrow to the north.
   *
   * @param at the middle of its foot
   */
  public record North(Spot at, LetterStyle style) {}
}
