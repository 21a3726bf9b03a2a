package plyscape.report;

import java.util.List;

/** What every page for the workshop says (src/contract.md, section 10). */
public final class Cautions {

  public static final List<String> ALL =
      List.of(
          "A router can hurt people and burn a shop. Never leave it running alone; know how to stop"
              + " it before you start it.",
          "Check zero, clamps and travel before each file, and run it in the air first, well above"
              + " the panel.",
          "Rapids pass close over wood, aslant too: the controller must take G0 in straight lines,"
              + " as RS274/NGC says.",
          "Small holes are bored straight down: cutters must cut at their centre.",
          "Wear eye and ear protection. Dust from dyed or resin-glued wood is worse than plain"
              + " dust: extract it and wear a mask.",
          "Feeds, speeds and depths here are starting points. Try them on waste of the same panel.",
          "Set zero on the top face where it has not been sanded, and again with every new cutter.",
          "The maker of the machine, cutter and glue, and local rules, have the last word.");

  private Cautions() {}
}
