package plyscape.cli.shop;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import plyscape.cli.talk.JsonText;
import plyscape.layup.CutAllowance;
import plyscape.layup.DepthModel;
import plyscape.layup.Layup;
import plyscape.layup.Ply;
import plyscape.shop.LayupSearch;
import plyscape.shop.Proposal;
import plyscape.text.Numbers;
import plyscape.text.Template;
import plyscape.text.TextTable;
import plyscape.text.Visible;

/** The outcome of {@code suggest} in words and as JSON. */
final class SuggestText {

  private SuggestText() {}

  static String text(LayupSearch.Outcome outcome, CutAllowance allowance) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < outcome.proposals().size(); i++) {
      Proposal p = outcome.proposals().get(i);
      out.append(i + 1).append(". ").append(sum(p)).append('\n');
      out.append(table(p)).append(Visible.line(uses(p))).append("\n\n");
    }
    return Template.fill(
        "%s%s (%d orders and beginnings of orders looked at).\n%s",
        out,
        outcome.proven()
            ? "Nothing better exists by these rules"
            : "Broken off at its limit: something better may exist",
        outcome.looked(),
        counted(outcome.proposals().get(0).layup(), allowance));
  }

  private static String sum(Proposal p) {
    return Template.fill(
        "%s, worst clearance %.2f times the need, fit %.3f, %.2f mm%s",
        p.unbalanced() == 0 ? "balanced" : p.unbalanced() + " unbalanced pairs",
        p.worstRatio(),
        p.fit(),
        DepthModel.nominalThicknessMm(p.layup()),
        p.spare() == 0 ? "" : ", " + p.spare() + " spare");
  }

  private static String table(Proposal p) {
    TextTable table =
        new TextTable()
            .right("no.")
            .left("veneer")
            .left("for")
            .right("thick")
            .right("grain")
            .right("ratio")
            .right("ground");
    for (Ply ply : p.layup().plies()) {
      Proposal.Place place = p.places().get(ply.number() - 1);
      boolean terrain = place.role() == Proposal.Role.TERRAIN;
      table.row(
          Integer.toString(ply.number()),
          ply.name(),
          use(place),
          Numbers.fixed(ply.thicknessMm(), 2),
          Numbers.trimmed(ply.grainDeg(), 0),
          place.role().shows() ? Numbers.fixed(place.ratio(), 2) : "-",
          terrain ? Numbers.fixed(100 * place.share(), 1) + " %" : "-");
    }
    return table.text();
  }

  /** What the clearances were worked out with: much of it is a default. */
  private static String counted(Layup layup, CutAllowance allowance) {
    return Template.fill(
        "Reckoned with glue lines of %s, flatness %.3t, Z error %.3t, sanding %s mm: defaults where"
            + " neither the sheets' file nor an option gives them.\n",
        mm(layup.glueLine().thicknessMm(), layup.glueLine().toleranceMm()),
        layup.flatnessMm(),
        allowance.zErrorMm(),
        mm(allowance.sandingMm(), allowance.sandingToleranceMm()));
  }

  private static String mm(double value, double tolerance) {
    return Numbers.trimmed(value, 3) + " +- " + Numbers.trimmed(tolerance, 3);
  }

  /** What a job would say about the plies: for the terrain, for zones. */
  static String uses(Proposal p) {
    List<String> terrain = new ArrayList<>();
    List<String> zones = new ArrayList<>();
    for (Ply ply : p.layup().plies()) {
      Proposal.Place place = p.places().get(ply.number() - 1);
      if (place.role() == Proposal.Role.TERRAIN) {
        terrain.add(ply.name());
      } else if (place.role() == Proposal.Role.ZONE) {
        zones.add(place.zone() + ": " + ply.name());
      }
    }
    return "terrain.plies: ["
        + String.join(", ", terrain)
        + "]"
        + (zones.isEmpty() ? "" : "; zones: " + String.join("; ", zones));
  }

  private static String use(Proposal.Place place) {
    return switch (place.role()) {
      case TERRAIN -> "terrain";
      case ZONE -> place.zone();
      case SPARE -> "spare";
      case FLOOR -> "floor";
    };
  }

  static String json(int plies, LayupSearch.Outcome outcome) {
    ObjectNode root = JsonText.object("plyscape-suggest-1");
    root.put("plies", plies)
        .put("proven", outcome.proven())
        .put("orders_looked_at", outcome.looked());
    ArrayNode list = root.putArray("proposals");
    for (Proposal p : outcome.proposals()) {
      ObjectNode node = list.addObject();
      node.put("unbalanced_pairs", p.unbalanced())
          .put("spare_plies", p.spare())
          .put("worst_ratio", p.worstRatio());
      node.put("fit", p.fit()).put("inversions", p.inversions());
      node.put("thickness_mm", DepthModel.nominalThicknessMm(p.layup()));
      ArrayNode array = node.putArray("layup");
      for (Ply ply : p.layup().plies()) {
        Proposal.Place place = p.places().get(ply.number() - 1);
        array
            .addObject()
            .put("number", ply.number())
            .put("name", ply.name())
            .put("colour", ply.colour())
            .put("thickness_mm", ply.thicknessMm())
            .put("tolerance_mm", ply.toleranceMm())
            .put("grain_deg", ply.grainDeg())
            .put("wood", ply.wood())
            .put("role", place.role().name().toLowerCase(Locale.ROOT))
            .put("zone", place.zone())
            .put("ratio", place.ratio())
            .put("share", place.share());
      }
    }
    return JsonText.of(root);
  }
}
