package plyscape.cli.job;

import java.util.EnumSet;
import java.util.Set;
import picocli.CommandLine.Option;
import plyscape.plan.Acceptance;

/** What a user believes of the measured panel where a job would be refused otherwise. */
final class AcceptOptions {

  @Option(
      names = "--accept-thickness",
      description = "Believe measured depths far from the nominal ones.")
  private boolean thickness;

  @Option(names = "--accept-bend", description = "Believe a top face bent by more than 3 mm.")
  private boolean bend;

  /** What was given. */
  Set<Acceptance> accepted() {
    Set<Acceptance> accepted = EnumSet.noneOf(Acceptance.class);
    if (thickness) {
      accepted.add(Acceptance.THICKNESS);
    }
    if (bend) {
      accepted.add(Acceptance.BEND);
    }
    return accepted;
  }
}
