package plyscape.report;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import plyscape.plan.Landscape;
import plyscape.region.Tiling;
import plyscape.text.Numbers;
import plyscape.zones.Zone;

/**
 * Zones with what was skipped, and what was given to a neighbour because no cutter or eye could
 * tell it.
 */
final class ZonePart {

  /** Skipped features listed by name; the rest is counted. */
  private static final int LISTED = 30;

  private ZonePart() {}

  static void write(Html page, Landscape plan) {
    page.raw("<section id=\"zones\">\n<h2>Zones</h2>\n");
    if (plan.zones().isEmpty()) {
      page.raw("<p>The job has none: the ground alone gives the plies.</p>\n");
    } else {
      page.table("Zone", "Ply", "#Features", "#Area, mm2", "Left out");
      for (Zone zone : plan.zones()) {
        page.raw("<tr>").cell(zone.spec().name());
        if (zone.spec().plyNumber() != null) {
          page.raw("<td>").ply(plan.depths().of(zone.spec().plyNumber()).ply()).raw("</td>");
        } else {
          page.cell(zone.spec().sink() + " below the ground's");
        }
        page.number(Integer.toString(zone.features()))
            .number(Numbers.fixed(zone.area().getArea(), 1));
        skipped(page, zone);
        page.raw("</tr>\n");
      }
      page.endTable();
    }
    merged(page, plan);
    page.raw("</section>\n");
  }

  private static void skipped(Html page, Zone zone) {
    if (zone.skipped().isEmpty()) {
      page.cell("nothing");
      return;
    }
    page.raw("<td><details><summary>").text(counts(zone)).raw("</summary><ul>");
    for (Zone.Skipped feature :
        zone.skipped().subList(0, Math.min(LISTED, zone.skipped().size()))) {
      page.raw("<li>").text(feature.feature() + ": " + feature.why()).raw("</li>");
    }
    if (zone.skipped().size() > LISTED) {
      page.raw("<li>and " + (zone.skipped().size() - LISTED) + " more</li>");
    }
    page.raw("</ul></details></td>");
  }

  /** Such as {@code 31: outside the carved area; 2: a point}. */
  private static String counts(Zone zone) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    zone.skipped().forEach(s -> counts.merge(s.why(), 1, Integer::sum));
    return counts.entrySet().stream()
        .map(e -> e.getValue() + ": " + e.getKey())
        .collect(Collectors.joining("; "));
  }

  private static void merged(Html page, Landscape plan) {
    page.raw("<h3>Given to a neighbour</h3>\n");
    if (plan.tiling().merged().isEmpty()) {
      page.raw("<p>Nothing: every part is wide enough to be cut and seen.</p>\n");
      return;
    }
    page.table("From", "Why", "Would have been", "Is now", "#Parts", "#Area, mm2");
    for (Tiling.Merged merged : plan.tiling().merged()) {
      page.raw("<tr>")
          .cell(merged.source())
          .cell(merged.why())
          .raw("<td>")
          .ply(plan.depths().of(merged.fromPly()).ply())
          .raw("</td><td>")
          .ply(plan.depths().of(merged.toPly()).ply())
          .raw("</td>")
          .number(Integer.toString(merged.count()))
          .number(Numbers.fixed(merged.areaMm2(), 2))
          .raw("</tr>\n");
    }
    page.endTable();
  }
}
