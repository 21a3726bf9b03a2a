package plyscape.simulate;

import java.util.List;

/** What a comparison of a cut surface with its targets says. */
interface Judgement {

  /** Index of the target at each cell, -1 where the panel stays uncut. */
  short[] targetOf();

  /** Code of the {@link CellVerdict} of each cell. */
  byte[] verdicts();

  /** Connected areas of gouged and of uncut cells, the largest first, then by place. */
  List<Difference> differences();

  /** The figures. */
  Verification verification(List<Verification.Collision> collisions, List<Bite> bites);
}
