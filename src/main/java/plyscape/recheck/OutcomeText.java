package plyscape.recheck;

import java.util.Comparator;
import java.util.List;
import plyscape.machine.Times;
import plyscape.report.json.PlanFigures;
import plyscape.simulate.Bite;
import plyscape.simulate.CellVerdict;
import plyscape.simulate.Cut;
import plyscape.simulate.Difference;
import plyscape.simulate.Verification;
import plyscape.text.Durations;
import plyscape.text.Numbers;
import plyscape.text.Template;
import plyscape.text.TextTable;

/** An outcome for people: tables of programs and plies, the figures, and the places. */
public final class OutcomeText {

  /** Places listed unless all are asked for. */
  private static final int SHOWN = 10;

  /** Cells of an area that says nothing to a person; it is in the sums. */
  private static final int SPECK_CELLS = 4;

  private static final String MORE = "  and more, with -v\n";

  private final Outcome outcome;
  private final boolean all;
  private final StringBuilder out = new StringBuilder();

  private OutcomeText(Outcome outcome, boolean all) {
    this.outcome = outcome;
    this.all = all;
  }

  /**
   * The text, LF at the end.
   *
   * @param all whether every place is listed
   */
  public static String of(Outcome outcome, boolean all) {
    OutcomeText text = new OutcomeText(outcome, all);
    text.programs();
    text.plies();
    text.figures();
    text.differences();
    text.collisions();
    text.bites();
    text.textFaults();
    return text.out.toString();
  }

  private void programs() {
    TextTable programs =
        new TextTable().left("program").left("tool").right("moves").right("cut mm").right("time");
    for (Cut cut : outcome.cuts()) {
      Times t = outcome.times(cut);
      programs.row(
          cut.program().file(),
          cut.tool().name(),
          "" + cut.program().blocks().size(),
          Numbers.fixed(t.cutMm(), 0),
          Durations.text(Outcome.seconds(cut, t)));
    }
    out.append(programs.text()).append('\n');
  }

  private void plies() {
    TextTable plies =
        new TextTable().right("ply").left("name").right("planned mm2").right("shows mm2");
    List<PlanFigures.PlyFigures> figures = outcome.plan().plan().plies();
    double[] shown = outcome.shownMm2();
    for (int i = 0; i < figures.size(); i++) {
      plies.row(
          "" + figures.get(i).number(),
          figures.get(i).name(),
          Numbers.fixed(figures.get(i).areaMm2(), 1),
          Numbers.fixed(shown[i], 1));
    }
    plies.row("", "glue line", "", Numbers.fixed(shown[figures.size()], 1));
    out.append(plies.text()).append('\n');
  }

  private void figures() {
    Verification v = outcome.result().verification();
    out.append(
        Template.fill(
            "at cells of %.3t mm: %.2f %% of the carved area matches, %.2f mm2 gouged",
            v.cellMm(), 100 * v.matchedShare(), v.gougedMm2()));
    if (v.gougedMm2() > 0) {
      out.append(" (up to ").append(Numbers.fixed(v.gougeMaxMm(), 3)).append(" mm over a wall)");
    }
    out.append(", ")
        .append(Numbers.fixed(v.uncutMm2(), 2))
        .append(outcome.stopped() ? " mm2 still to cut, " : " mm2 left uncut, ")
        .append(Numbers.fixed(v.unreachableMm2(), 2))
        .append(" mm2 out of every cutter's reach\n");
    v.bites().stream().max(Comparator.comparingDouble(Bite::biteMm)).ifPresent(this::deepest);
  }

  private void deepest(Bite bite) {
    out.append("deepest bite ").append(Numbers.fixed(bite.biteMm(), 3)).append(" mm");
    if (bite.stepdownMm() > 0) {
      out.append(" of a stepdown of ").append(Numbers.trimmed(bite.stepdownMm(), 3));
    }
    out.append(": ").append(bite.file()).append(" line ").append(bite.line()).append(", ");
    place(bite.x(), bite.y());
    out.append('\n');
  }

  private void bites() {
    for (Bite bite : outcome.result().verification().bitesTooDeep()) {
      out.append(bite.file()).append(" line ").append(bite.line()).append(", ");
      place(bite.x(), bite.y());
      out.append(
          Template.fill(
              ", %.3f mm deep: bites %.3f mm at once, the stepdown is %.3t\n",
              bite.depthMm(), bite.biteMm(), bite.stepdownMm()));
    }
  }

  private void differences() {
    int shown = 0;
    for (Difference d : worthSaying()) {
      if (!all && shown++ == SHOWN) {
        out.append(MORE);
        return;
      }
      out.append(d.verdict() == CellVerdict.GOUGED ? "gouged " : "uncut  ")
          .append(Numbers.fixed(d.areaMm2(), 2))
          .append(" mm2 about ");
      place(d.x(), d.y());
      out.append(Template.fill(": %.3f mm deep for %.3f\n", d.depthMm(), d.targetMm()));
    }
  }

  private List<Difference> worthSaying() {
    double speck = SPECK_CELLS * outcome.result().field().cellAreaMm2();
    return outcome.result().differences().stream()
        .filter(d -> d.verdict() == CellVerdict.GOUGED || !outcome.stopped() && d.areaMm2() > speck)
        .toList();
  }

  private void collisions() {
    int shown = 0;
    for (Verification.Collision c : outcome.result().verification().collisions()) {
      if (!all && shown++ == SHOWN) {
        out.append(MORE);
        return;
      }
      out.append(c.file()).append(" line ").append(c.line()).append(", ");
      place(c.x(), c.y());
      out.append(Template.fill(", %.3f mm deep: %s\n", c.depthMm(), c.what()));
    }
  }

  private void textFaults() {
    outcome.textFaults().forEach(fault -> out.append(fault).append('\n'));
  }

  private void place(double x, double y) {
    out.append('X').append(Numbers.fixed(x, 2)).append(" Y").append(Numbers.fixed(y, 2));
  }
}
