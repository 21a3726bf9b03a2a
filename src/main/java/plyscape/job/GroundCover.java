package plyscape.job;

import java.util.Objects;

/**
 * What is carved where the raster's ground isn't meant: under water, where it has no value, outside
 * a polygon. Immutable.
 *
 * @param sea what lies at or under a level, or null
 * @param voids what becomes of cells without a value
 * @param outline what lies outside a polygon, or null
 */
public record GroundCover(Sea sea, Voids voids, Outline outline) {

  /** Ground everywhere. */
  public static final GroundCover NONE = new GroundCover(null, Voids.FILL_SMALL, null);

  /** Checks that voids are settled. */
  public GroundCover {
    Objects.requireNonNull(voids);
  }

  /**
   * Water up to a level.
   *
   * @param levelM elevation in metres; ground at or under it is sea
   */
  public record Sea(double levelM, int plyNumber) {}

  /**
   * What becomes of ground without a value.
   *
   * @param rule what is done
   * @param plyNumber the ply that it takes, or 0 unless the rule is {@code PLY}
   */
  public record Voids(Rule rule, int plyNumber) {

    /** Small gaps are filled; larger ones too, but with a warning. */
    public static final Voids FILL_SMALL = new Voids(Rule.FILL_SMALL, 0);

    /** Checks the number. */
    public Voids {
      if ((rule == Rule.PLY) != (plyNumber > 0)) {
        throw new IllegalArgumentException("a ply for " + rule);
      }
    }

    /** What is done. */
    public enum Rule {
      /** The default: filled from around them, with a warning where they aren't small. */
      FILL_SMALL,
      /** Filled from around them, as asked. */
      FILL,
      /** Left uncut where the top ply may be left, as the frame around the ground. */
      LEAVE,
      /** Given to a ply. */
      PLY
    }
  }

  /**
   * A polygon along which the terrain is cut.
   *
   * @param map the polygon, picked as in a zone
   * @param outsidePlyNumber ply of everything outside
   */
  public record Outline(MapPick map, int outsidePlyNumber) {}
}
