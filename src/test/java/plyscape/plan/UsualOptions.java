package plyscape.plan;

import java.util.Set;

/** How tests plan a job: the whole of it, with nothing accepted. */
public final class UsualOptions {

  /** As the command's own defaults. */
  public static final PlanOptions WHOLE =
      new PlanOptions(false, false, Set.of(), PlanOptions.USUAL_CELL_MM);

  private UsualOptions() {}
}
