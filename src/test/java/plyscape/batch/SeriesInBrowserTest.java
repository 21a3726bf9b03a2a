package plyscape.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.files.PlanFiles;
import plyscape.report.Browser;
import plyscape.report.ReportInBrowserTest;

/** The page over a series in headless Chromium; run as {@link ReportInBrowserTest} is. */
@Tag("browser")
class SeriesInBrowserTest {

  private static final String NAMES =
      "[...document.querySelectorAll('tbody tr:not([hidden]) td:nth-child(2)')].map((e) =>"
          + " e.textContent).join(', ')";

  @TempDir Path folder;
  private Path panel;

  @BeforeEach
  void makePanel() throws IOException {
    panel = Files.createDirectory(folder.resolve("panel"));
    Files.writeString(panel.resolve(PlanFiles.PLAN), "{}");
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    ImageIO.write(new BufferedImage(320, 200, BufferedImage.TYPE_INT_RGB), "png", png);
    Files.write(panel.resolve(PlanFiles.PREVIEW), png.toByteArray());
  }

  @Test
  void search_sort_andWhatIsMissing() throws Exception {
    Gathered.Entry hill = whole("hill 10", 900, Map.of("merged", 2));
    Gathered.Entry moor = whole("Süd moor", 7200, Map.of());
    Gathered.Entry low = whole("hill 9", 100, Map.of("weak-standing", 1));
    Gathered.Entry bad = failed("<b>", "a.yaml:4: found \"<i>\"");
    try (Browser browser =
        open(List.of(hill, moor, low, bad, new Gathered.Entry("x", null, null)))) {
      assertEquals("hill 10, Süd moor, hill 9, <b>, x", names(browser));
      assertEquals(
          "160x100",
          browser
              .eval(
                  "(() => {const i = document.images[0]; return i.naturalWidth + 'x' +"
                      + " i.naturalHeight})()")
              .asText());
      search(browser, "SÜD");
      assertEquals("Süd moor", names(browser));
      assertEquals("1 of 5", browser.eval("document.getElementById('shown').textContent").asText());
      search(browser, "hill standing");
      assertEquals("hill 9", names(browser));
      search(browser, "");
      sort(browser, 0);
      assertEquals("<b>, hill 9, hill 10, Süd moor, x", names(browser));
      sort(browser, 1);
      assertEquals("<b>, x, hill 9, hill 10, Süd moor", names(browser));
      sort(browser, 1);
      assertEquals("Süd moor, hill 10, hill 9, <b>, x", names(browser));
      sort(browser, 3);
      assertEquals("hill 9, hill 10", names(browser).substring(names(browser).length() - 15));
      browser.eval("document.getElementById('missing').click()");
      assertEquals("<b>, x", names(browser));
      assertTrue(browser.eval("document.body.textContent").asText().contains("2 not there"));
      assertTrue(browser.eval("document.body.textContent").asText().contains("found \"<i>\""));
    }
  }

  @Test
  void aThousand_areSearchedAndSortedInNoTime() throws Exception {
    List<Gathered.Entry> entries = new ArrayList<>();
    for (int i = 0; i < 1000; i++) {
      entries.add(whole("valley " + (i * 7919 % 1000), 100 + i, Map.of("merged", 1)));
    }
    try (Browser browser = open(entries)) {
      search(browser, "valley 777");
      assertEquals("valley 777", names(browser));
      double took =
          browser
              .eval(
                  "(() => {const t = performance.now(); const s ="
                      + " document.getElementById('search'); s.value = ''; s.dispatchEvent(new"
                      + " Event('input')); document.querySelector('thead button').click();"
                      + " document.body.getBoundingClientRect(); return performance.now() - t})()")
              .asDouble();
      assertTrue(names(browser).startsWith("valley 0, valley 1, valley 2, valley 3"));
      assertTrue(took < 3000, took + " ms"); // a tenth of it on an idle machine
    }
  }

  /** From a file, with no network, no message on the console, and no wider than a phone. */
  private Browser open(List<Gathered.Entry> entries) throws Exception {
    Path page = folder.resolve(PlanFiles.INDEX);
    List<String> names = entries.stream().map(Gathered.Entry::job).toList();
    Files.writeString(page, SeriesPage.text(new Gathered(names, entries), folder));
    Browser browser = new Browser(folder.resolve("browser"));
    browser.screen(390, 844, true);
    browser.open(page);
    assertEquals(390, browser.eval("document.documentElement.scrollWidth").asInt());
    browser.screen(1200, 900, false);
    assertEquals(List.of(), browser.faults());
    assertEquals(List.of(page.toUri().toString()), browser.requests());
    return browser;
  }

  private static String names(Browser browser) throws Exception {
    return browser.eval(NAMES).asText();
  }

  private static void search(Browser browser, String text) throws Exception {
    browser.eval(
        "(() => {const s = document.getElementById('search'); s.value = '"
            + text
            + "'; s.dispatchEvent(new Event('input'))})()");
  }

  private static void sort(Browser browser, int column) throws Exception {
    browser.eval("document.querySelectorAll('thead button')[" + column + "].click()");
  }

  private Gathered.Entry whole(String job, double seconds, Map<String, Integer> warnings) {
    return new Gathered.Entry(
        job, new JobResult(job, 0, "", 1, seconds, new TreeMap<>(warnings)), panel);
  }

  private static Gathered.Entry failed(String job, String message) {
    return new Gathered.Entry(job, new JobResult(job, 2, message, 1, 0, new TreeMap<>()), null);
  }
}
