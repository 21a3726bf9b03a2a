package plyscape.report.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.plan.PanelPlan;
import plyscape.plan.ToolProgram;
import plyscape.render.HandPlan;
import plyscape.report.Browser;
import plyscape.report.ReportInBrowserTest;

/** The set-up sheet in headless Chromium; run as {@link ReportInBrowserTest} is. */
@Tag("browser")
class SetupInBrowserTest {

  @TempDir Path directory;

  @Test
  void oneSheet_ofEitherPaper_andAPhone() throws Exception {
    try (Browser browser = new Browser(directory.resolve("browser"))) {
      for (int programs : new int[] {1, 3, 5}) {
        Path page = directory.resolve("setup" + programs + ".html");
        Files.writeString(page, SetupPage.text(plan(programs)));
        browser.screen(1000, 900, false);
        browser.dark(true);
        browser.open(page);
        assertEquals(
            "rgb(255, 255, 255)",
            browser.eval("getComputedStyle(document.body).backgroundColor").asText());
        assertEquals(1, pages(browser.pdf(8.27, 11.69)), "A4, programs: " + programs);
        assertEquals(1, pages(browser.pdf(8.5, 11)), "US Letter, programs: " + programs);
        browser.screen(390, 844, true);
        browser.settle();
        assertEquals(390, browser.eval("document.documentElement.scrollWidth").asInt());
        assertEquals(List.of(), browser.faults());
        assertEquals(List.of(page.toUri().toString()), browser.requests());
      }
      assertTrue(
          browser
                  .eval(
                      "Math.min(...[...document.querySelectorAll('td, dd, li, small')].map((e) =>"
                          + " parseFloat(getComputedStyle(e).fontSize)))")
                  .asDouble()
              > 11,
          "8.5 pt and more");
    }
  }

  private static long pages(byte[] pdf) {
    return Pattern.compile("/Type\\s*/Page[^s]")
        .matcher(new String(pdf, StandardCharsets.ISO_8859_1))
        .results()
        .count();
  }

  private static PanelPlan plan(int count) {
    PanelPlan one = HandPlan.make();
    ToolProgram first = one.programs().get(0);
    List<ToolProgram> programs = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      String file = "0" + i + "-tapered-ball-nose-1-5-mm-" + i + ".nc";
      programs.add(
          new ToolProgram(
              file,
              first.tool().named("tapered ball nose 1.5 mm " + i),
              first.text(),
              first.passes(),
              first.paths(),
              first.way(),
              first.low()));
    }
    return new PanelPlan(
        one.landscape(),
        programs,
        one.time(),
        one.verification(),
        one.cutouts(),
        one.cutWarnings(),
        one.estimates());
  }
}
