package plyscape.cli.job;

import plyscape.plan.Plan;
import plyscape.render.TerminalPreview;

/** Stages whose table has the picture in characters above it. */
record PictureStages(Stages usual, TerminalPreview.Colour colour, int columns)
    implements StagesDecorator {

  @Override
  public String table(Plan plan) {
    return TerminalPreview.text(plan.landscape(), columns, colour) + "\n" + usual.table(plan);
  }
}
