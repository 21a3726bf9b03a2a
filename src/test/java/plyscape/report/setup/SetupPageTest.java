package plyscape.report.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import plyscape.bend.PanelShape;
import plyscape.bend.TopMap;
import plyscape.bend.TopReading;
import plyscape.plan.CutoutArea;
import plyscape.plan.Landscape;
import plyscape.plan.PanelPlan;
import plyscape.render.HandPlan;
import plyscape.report.Cautions;

/** What the set-up sheet says; that it fits one sheet is seen in a browser. */
class SetupPageTest {

  private static final String PAGE = SetupPage.text(HandPlan.make());
  private static final String WORDS =
      PAGE.substring(PAGE.indexOf("<body>"))
          .replaceAll("<[^>]*>", " ")
          .replace("&#39;", "'")
          .replaceAll("\\s+", " ");

  @Test
  void facts_areThoseOfPanelMachineAndPrograms() {
    for (String part :
        List.of(
            "Set-up: Hand-made &amp; small",
            "Stock 100 x 80 mm, 5.00 mm thick, 5 plies",
            "Up ply 1, meadow; its grain 0° from X",
            "Zero X0 Y0 at the panel's lower left corner, Z0 on its top face",
            // The tip of the cutter of 3 mm comes to 88.5; its edge to 90, of 100.
            "X 0.0 to 88.5, Y 0.0 to 68.5, Z -3.40 to 4.00 mm",
            "needs X 88.5 of 300, Y 68.5 of 300, Z 7.4 of 80 mm",
            "free edges left 20.0, right 10.0, near 10.0, far 10.0 mm",
            "1.60 mm of wood stay under the deepest cut",
            // 86.75 s, and a minute and 5 s for the one cutter.
            "1 min 27 s of running, 2 min 32 s with the cutters put in",
            "Z0 set with this cutter")) {
      assertTrue(WORDS.contains(part), "not on the sheet: " + part + "\n" + WORDS);
    }
  }

  @Test
  void rows_areTheProgramsInCuttingOrder() {
    assertTrue(
        WORDS.contains(
            "01-end-mill-3.nc clears down to barley, deep blue end mill 3 flat, 3 mm, 2 flutes of"
                + " 12 mm over 3.4 16000 1800 500 2 -3.400 1 min 27 s"),
        WORDS);
    assertEquals(2, PAGE.split("<tr", -1).length - 1, "the head and one program");
    assertEquals(7, PAGE.split("class=\"box\"", -1).length - 1, "six ticks before, one a program");
  }

  /** A panel of 100 x 80 mm whose top rises to the right, with a pin and an outline with a tab. */
  private static PanelPlan lying() {
    PanelPlan flat = HandPlan.make();
    Landscape l = flat.landscape();
    TopMap map =
        TopMap.of(
            "top.csv",
            List.of(
                new TopReading(0, 0, -0.1, 2),
                new TopReading(100, 0, 0.3, 3),
                new TopReading(0, 80, -0.1, 4),
                new TopReading(100, 80, 0.4, 5),
                new TopReading(25, 40, 0.01, 6)),
            0.02);
    Landscape bent =
        new Landscape(
            l.job(),
            l.depths(),
            l.maps(),
            l.tiling(),
            l.faces(),
            PanelShape.of(Optional.of(map), 0, l.depths(), l.depths()),
            l.standing(),
            l.warnings());
    GeometryFactory mm = new GeometryFactory();
    List<CutoutArea> cutouts =
        List.of(
            new CutoutArea("pin", 4, 0, mm.toGeometry(new Envelope(3, 7, 3, 7)), null),
            new CutoutArea("outline", 5.3, 0, mm.toGeometry(new Envelope(1, 4, 10, 70)), null),
            new CutoutArea("tab", 5.3, 1.8, mm.toGeometry(new Envelope(1, 4, 30, 36)), null));
    return new PanelPlan(
        bent,
        flat.programs(),
        flat.time(),
        flat.verification(),
        cutouts,
        flat.warnings(),
        flat.estimates());
  }

  @Test
  void lyingPanel_saysWhereZeroIsTouchedAndDrawsWhatElseIsCut() {
    String page = SetupPage.text(lying());
    // The lowest place is 80 mm up the left edge or at its foot, the highest at the upper right.
    assertTrue(page.contains("<g id=\"highest\"><path d=\"M100 -2.2l"), page);
    assertTrue(page.contains(">+0.40</text>") && page.contains(">-0.10</text>"), page);
    // Y is turned down: the outline from 10 to 70 mm up, the tab from 30 to 36.
    assertTrue(page.contains("<path class=\"outline\" d=\"M1 70L1 10L4 10L4 70Z\""), page);
    assertTrue(page.contains("<path class=\"tab\" d=\"M1 50L1 44L4 44L4 50Z\""), page);
    assertTrue(page.contains("<path class=\"pin\" d=\"M3 77"), page);
    for (String part :
        List.of(
            "as when it was probed: at X25 Y40 of the programs it stands at Z0.01",
            "clamped just as when it was probed",
            "White in it: tabs.",
            // 3.4 mm deep, and the panel stands up to 0.4 mm over Z0.
            "over 3.8")) {
      assertTrue(page.contains(part), part);
    }
    assertFalse(PAGE.contains("Triangles") || PAGE.contains("class=\"pin\""), "a plain panel");
  }

  @Test
  void page_needsNothingAndRunsNothing() {
    String page = SetupPage.text(HandPlan.make("<b class=evil>\"meadow\"</b>"));
    assertFalse(page.contains("<b class=evil>"));
    assertFalse(page.contains("<script") || page.contains("href=") || page.contains("src="));
    Cautions.ALL.forEach(
        caution -> assertTrue(page.contains(plyscape.text.Markup.escape(caution)), caution));
    assertEquals(PAGE, SetupPage.text(HandPlan.make()), "same plan, same page");
  }
}
