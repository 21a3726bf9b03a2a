package plyscape.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plyscape.plan.PanelPlan;
import plyscape.region.FaceField;
import plyscape.simulate.Bite;
import plyscape.simulate.Verification;
import plyscape.text.Numbers;
import plyscape.text.Template;

/** What was proved, what stands out about wood and cutters, and the cautions. */
final class CheckPart {

  private static final int LISTED = 20;

  private CheckPart() {}

  static void write(Html page, PanelPlan plan) {
    page.raw("<section id=\"checks\">\n<h2>Checks</h2>\n");
    proof(page, plan.landscape().faces(), plan.verification());
    findings(page, "Wood", WoodCheck.of(plan.landscape()));
    findings(page, "Cutters", CutterCheck.of(plan));
    page.raw("</section>\n<section id=\"cautions\">\n<h2>Cautions</h2>\n<ul class=\"cautions\">\n");
    for (String caution : Cautions.ALL) {
      page.raw("<li>").text(caution).raw("</li>\n");
    }
    page.raw("</ul>\n</section>\n");
  }

  private static void proof(Html page, Optional<FaceField> faces, Verification proof) {
    page.raw(
            "<h3>Proof</h3>\n"
                + "<p>The written G-code was read back and cut in simulation by code that shares"
                + " nothing with the planner.</p>\n")
        .raw("<dl class=\"pair\" id=\"proof\">");
    pair(
        page,
        "As planned",
        Numbers.fixed(100 * proof.matchedShare(), 2)
            + " % of the carved area, within 0.01 mm of its depth"
            + faces
                .map(
                    sculpted ->
                        " or, on sculpted faces, no more than the ridges' "
                            + Numbers.trimmed(sculpted.cuspMm(), 3)
                            + " mm and 0.01 mm above it")
                .orElse(""));
    pair(
        page,
        "Cut too deep",
        Numbers.fixed(proof.gougedMm2(), 3)
            + " mm2, at most "
            + Numbers.fixed(proof.gougeMaxMm(), 3)
            + (faces.isEmpty() ? " mm over a wall" : " mm"));
    left(page, faces, proof);
    pair(page, "Collisions", Integer.toString(proof.collisions().size()));
    pair(page, "Deepest bite", bites(proof));
    page.raw("</dl>\n");
    if (!proof.collisions().isEmpty()) {
      collisions(page, proof.collisions());
    }
  }

  private static void left(Html page, Optional<FaceField> faces, Verification proof) {
    pair(
        page,
        "Left too high",
        Numbers.fixed(proof.uncutMm2(), 2) + " mm2 that a cutter could have reached");
    pair(
        page,
        "Out of reach",
        Numbers.fixed(proof.unreachableMm2(), 2)
            + (faces.isEmpty()
                ? " mm2 in corners too tight for the smallest cutter"
                : " mm2 in corners and at the feet of walls where the cutters' round ends don't"
                    + " fit; they keep their colour where a flat cutter came"));
  }

  private static void collisions(Html page, List<Verification.Collision> collisions) {
    page.table("File", "#Line", "#X", "#Y", "#Depth", "What");
    for (Verification.Collision c : collisions.subList(0, Math.min(LISTED, collisions.size()))) {
      page.raw("<tr>")
          .cell(c.file())
          .number(Integer.toString(c.line()))
          .number(Numbers.fixed(c.x(), 2))
          .number(Numbers.fixed(c.y(), 2))
          .number(Numbers.fixed(c.depthMm(), 3))
          .cell(c.what())
          .raw("</tr>\n");
    }
    page.endTable();
  }

  private static String bites(Verification proof) {
    if (proof.bites().isEmpty()) {
      return "nothing is cut";
    }
    List<String> words = new ArrayList<>();
    for (Bite bite : proof.bites()) {
      words.add(
          Template.fill(
              "%.3f mm of a stepdown of %.3t in %s line %s",
              bite.biteMm(), bite.stepdownMm(), bite.file(), bite.line()));
    }
    return String.join("; ", words);
  }

  private static void findings(Html page, String title, List<Finding> findings) {
    page.raw("<h3>" + title + "</h3>\n<ul>\n");
    for (Finding finding : findings) {
      page.raw(
              finding.good()
                  ? "<li><span class=\"good\">good</span> "
                  : "<li><span class=\"bad\">look</span> ")
          .text(finding.text())
          .raw("</li>\n");
    }
    page.raw("</ul>\n");
  }

  private static void pair(Html page, String name, String value) {
    page.raw("<dt>").text(name).raw("</dt><dd>").text(value).raw("</dd>\n");
  }
}
