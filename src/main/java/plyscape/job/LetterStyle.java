package plyscape.job;

import java.nio.file.Path;

/**
 * How letters look and which ply they show: exactly one of {@code plyNumber} and {@code sink} is
 * set. Immutable.
 *
 * @param heightMm of a capital
 * @param plyNumber ply, from 1, or null
 * @param sink plies below what the terrain alone gives, or null
 * @param font file of a TrueType font, or null for the built-in strokes
 */
public record LetterStyle(double heightMm, Integer plyNumber, Integer sink, Path font) {

  /** Checks height and ply. */
  public LetterStyle {
    if (!(heightMm > 0) || (plyNumber == null) == (sink == null)) {
      throw new IllegalArgumentException("wanted a height, and either a ply or a sink");
    }
  }
}
