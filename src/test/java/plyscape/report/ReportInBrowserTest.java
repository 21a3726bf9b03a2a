package plyscape.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.awt.image.BufferedImage;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.render.HandPlan;

/**
 * The page in a real browser, headless Chromium, with real mouse, fingers and keys. After every
 * test: nothing on the console, nothing asked of any network. Not in the default run, as it needs
 * the browser: {@code mvn test -Dgroups=browser -DexcludedTags=}.
 */
@Tag("browser")
public class ReportInBrowserTest {

  @TempDir static Path directory;
  private static Browser browser;
  private static Path page;

  @BeforeAll
  static void start() throws Exception {
    page = directory.resolve("report.html");
    Files.writeString(page, HtmlReportTest.page(HandPlan.make("<b class=evil>meadow</b>")));
    browser = new Browser(directory.resolve("browser"));
  }

  @AfterAll
  static void stop() throws Exception {
    browser.close();
  }

  @BeforeEach
  void open() throws Exception {
    browser.screen(1200, 900, false);
    browser.dark(false);
    browser.open(page);
  }

  @AfterEach
  void nothingComplainedOrLoaded() throws Exception {
    assertEquals(List.of(), browser.faults());
    assertEquals(List.of(page.toUri().toString()), browser.requests());
  }

  @Test
  void place_saysItsPlyDepthAndZone() throws Exception {
    List<String> bar = read(80, 40);
    assertEquals("4 deep blue", bar.get(0));
    assertEquals("3.500 mm deep", bar.get(1));
    assertEquals("3.400 mm", bar.get(2));
    assertTrue(bar.get(3).startsWith("0.500 mm, needed 0.1"), bar.toString());
    assertTrue(bar.contains("river"), bar.toString());
    // (80 - 5 - 0.5) mm of 89 from 100 to 200 m.
    assertTrue(bar.contains("zone over ground of 184 m"), bar.toString());
    assertTrue(read(66, 40).contains("ground 168 m, band 160.0 to 200.0"), read(66, 40).toString());
    assertTrue(
        read(10, 40).toString().contains("3 brick, too small or narrow there"),
        read(10, 40).toString());
    assertTrue(bar.toString().contains("412750, 5601350"), bar.toString());
    assertTrue(read(2, 2).get(0).contains("border"));
    assertEquals(0, browser.eval("document.querySelectorAll('b.evil').length").asInt());
  }

  @Test
  void layersRiskZonesAndPatterns_lieOverThePicture() throws Exception {
    assertEquals(0, overlay(80, 40)[3], "nothing over the picture at first");
    click(".layer[value=\"4\"]");
    assertTrue(overlay(80, 40)[3] > 200, "a layer switched off is covered");
    assertEquals(0, overlay(25, 25)[3]);
    click("#all-on");
    click("#patterns");
    assertTrue(hatched() > 3 && hatched() < 57, "a pattern, not a flat tone");
    click("input[value=risk]");
    assertTrue(overlay(25, 25)[3] > 200);
    assertEquals("false", browser.eval("document.getElementById('risk-key').hidden").asText());
    Set<Integer> tones = new HashSet<>();
    for (int k = 0; k < 60; k++) {
      tones.add(overlay(21 + k * 0.1, 25)[0]);
    }
    assertTrue(tones.size() > 1, "patterns show over the risk too");
    click("input[value=zones]");
    assertTrue(overlay(80, 40)[3] > 200);
    click("input[value=colours]");
    click("#numbers");
    assertTrue(browser.eval("document.getElementById('labels').children.length").asInt() >= 4);
  }

  @Test
  void section_followsItsHandles() throws Exception {
    String label = "document.getElementById('section-view').getAttribute('aria-label')";
    assertTrue(browser.eval(label).asText().contains("deep blue"));
    browser.eval("document.getElementById('handle-b').focus()");
    for (int i = 0; i < 40; i++) {
      browser.key("ArrowLeft");
    }
    assertEquals(
        58,
        Double.parseDouble(
            browser.eval("document.getElementById('handle-b').getAttribute('cx')").asText()),
        1e-9);
    assertTrue(
        !browser.eval(label).asText().contains("deep blue"),
        "the shorter section ends before the bar");
    browser.picture("#stage");
    double[] a = box("#handle-a");
    drag(a[0] + a[2] / 2, a[1] + a[3] / 2, 40, 60);
    assertTrue(
        Double.parseDouble(
                browser.eval("document.getElementById('handle-a').getAttribute('cx')").asText())
            > 3);
  }

  @Test
  void solid_turnsByMouseAndKeys_andNeverLeavesItsCanvas() throws Exception {
    String words = "document.getElementById('solid-words').textContent";
    assertTrue(
        browser.eval("Number(document.getElementById('solid').dataset.triangles)").asInt() > 50);
    String first = browser.eval(words).asText();
    BufferedImage before = browser.picture("#solid");
    assertTrue(SolidPicture.tones(before) > 8, "several plies, lit");
    SolidPicture.assertFits(before);
    double[] canvas = box("#solid");
    drag(canvas[0] + canvas[2] / 2, canvas[1] + canvas[3] / 2, 260, 30);
    assertNotEquals(first, browser.eval(words).asText());
    SolidPicture.assertFits(browser.picture("#solid"));
    browser.eval("document.getElementById('solid').focus()");
    for (int turn = 0; turn < 9; turn++) {
      for (int k = 0; k < 7; k++) {
        browser.key("ArrowLeft");
      }
      browser.key(turn < 5 ? "ArrowDown" : "ArrowUp");
      SolidPicture.assertFits(browser.picture("#solid"));
    }
    browser.eval("document.getElementById('solid').focus()");
    browser.key("Home");
    browser.settle();
    assertEquals(first, browser.eval(words).asText());
    assertEquals(
        0,
        browser.eval("document.getElementById('solid').getContext('webgl2').getError()").asInt());
  }

  @Test
  void solid_savesAPicture() throws Exception {
    Path saved = Files.createDirectories(directory.resolve("saved"));
    browser.call(
        "Page.setDownloadBehavior",
        Browser.params().put("behavior", "allow").put("downloadPath", saved.toString()));
    click("#solid-save");
    Path file = saved.resolve("hand-made-small-solid.png");
    for (int i = 0; i < 400 && !Files.exists(file); i++) {
      Thread.sleep(50);
    }
    BufferedImage picture = javax.imageio.ImageIO.read(file.toFile());
    assertEquals(2400, picture.getWidth());
    assertEquals(0xffffffff, picture.getRGB(2, 2));
    assertTrue(SolidPicture.tones(picture) > 8);
  }

  @Test
  void solid_withoutWebGl_isDrawnFromCells() throws Exception {
    try (Browser plain = new Browser(directory.resolve("plain"), "--disable-3d-apis")) {
      plain.screen(1000, 800, false);
      plain.open(page);
      assertTrue(
          plain.eval("Number(document.getElementById('solid').dataset.cells)").asInt() > 1000);
      BufferedImage picture = plain.picture("#solid");
      assertTrue(SolidPicture.tones(picture) > 8);
      SolidPicture.assertFits(picture);
      plain.eval("document.getElementById('turn-left').click()");
      plain.settle();
      SolidPicture.assertFits(plain.picture("#solid"));
      assertEquals(List.of(), plain.faults());
    }
  }

  @Test
  void print_isLightWithItsLegends_fromADarkScreen() throws Exception {
    browser.dark(true);
    browser.settle();
    click("input[value=risk]");
    browser.eval("window.dispatchEvent(new Event('beforeprint'))");
    assertTrue(inkOfSection() < 80, "black words on white paper");
    assertEquals("[255,255,255,255]", pixels("solid-paper", "1, 1, 1, 1").toString());
    browser.eval("window.dispatchEvent(new Event('afterprint'))");
    assertTrue(inkOfSection() > 180, "light words on the dark screen");
    for (double[] paper : new double[][] {{8.27, 11.69}, {8.5, 11}}) {
      String pdf = new String(browser.pdf(paper[0], paper[1]), StandardCharsets.ISO_8859_1);
      Matcher pages = Pattern.compile("/Type\\s*/Page[^s]").matcher(pdf);
      int count = 0;
      while (pages.find()) {
        count++;
      }
      assertTrue(count >= 2 && count <= 5, count + " pages");
    }
    browser.call("Emulation.setEmulatedMedia", Browser.params().put("media", "print"));
    assertEquals(
        "rgb(255, 255, 255)",
        browser.eval("getComputedStyle(document.body).backgroundColor").asText());
    assertTrue(box("#risk-key")[3] > 20, "the legend is on the paper");
    assertEquals(0, box("#show")[3], "what can't be clicked isn't");
    assertTrue(
        browser
                .eval(
                    "Math.min(...[...document.querySelectorAll('td')].map((e) =>"
                        + " parseFloat(getComputedStyle(e).fontSize)))")
                .asDouble()
            > 10.5,
        "8 pt and more");
  }

  @Test
  void phone_fitsTheScreen_andFingersFindTheirPlace() throws Exception {
    browser.screen(390, 844, true);
    browser.open(page);
    assertEquals(
        390, browser.eval("document.documentElement.scrollWidth").asInt(), "nothing sticks out");
    JsonNode small =
        browser.eval(
            "[...document.querySelectorAll('button, .side label, .handle')].filter((e) => { const r"
                + " = e.getBoundingClientRect(); return r.height < 43.5 || r.width < 43.5;"
                + " }).map((e) => e.id || e.textContent)");
    assertEquals("[]", small.toString(), "44 pixels for a finger");
    assertTrue(
        browser
                .eval("parseFloat(getComputedStyle(document.querySelector('.bar span')).fontSize)")
                .asDouble()
            >= 13,
        "time bars can be read");
    // The verdict is seen without scrolling the table.
    JsonNode verdict =
        browser.eval(
            "(() => { const r = document.querySelectorAll('#plies tbody"
                + " td')[1].getBoundingClientRect(); return [r.left, r.right]; })()");
    assertTrue(verdict.get(0).asDouble() >= 0 && verdict.get(1).asDouble() <= 390);
    String words = "document.getElementById('solid-words').textContent";
    String first = browser.eval(words).asText();
    browser.picture("#solid");
    double[] canvas = box("#solid");
    double x = canvas[0] + canvas[2] / 2;
    double y = canvas[1] + canvas[3] / 2;
    browser.fingers("touchStart", x, y);
    for (int i = 1; i <= 10; i++) {
      browser.fingers("touchMove", x + 12 * i, y);
    }
    browser.fingers("touchEnd");
    browser.settle();
    assertNotEquals(first, browser.eval(words).asText(), "a finger turns it");
    browser.fingers("touchStart", x - 30, y, x + 30, y);
    for (int i = 1; i <= 8; i++) {
      browser.fingers("touchMove", x - 30 - 5 * i, y, x + 30 + 5 * i, y);
    }
    browser.fingers("touchEnd");
    assertTrue(browser.eval("plyscape.solidView.zoom").asDouble() > 1.5, "a pinch comes nearer");
  }

  @Test
  void dark_changesPaperAndInk() throws Exception {
    String background = "getComputedStyle(document.body).backgroundColor";
    String light = browser.eval(background).asText();
    int before = browser.picture("#solid").getRGB(3, 3);
    browser.dark(true);
    browser.settle();
    assertNotEquals(light, browser.eval(background).asText());
    int after = browser.picture("#solid").getRGB(3, 3);
    assertTrue((before & 0xff) > 200 && (after & 0xff) < 80, "the solid's paper too");
  }

  @Test
  void tables_areAllThere() throws Exception {
    assertEquals(5, browser.eval("document.querySelectorAll('#plies tbody tr').length").asInt());
    assertEquals(4, browser.eval("document.querySelectorAll('.layer').length").asInt());
    assertEquals(2, browser.eval("document.querySelectorAll('.bar span').length").asInt());
    assertEquals(1, browser.eval("document.querySelectorAll('#warnings li').length").asInt());
    // Plies, zones, what was given to neighbours, passes, paths.
    assertEquals(5, browser.eval("document.querySelectorAll('table').length").asInt());
  }

  /** The readout with the mouse over a place of the panel (mm). */
  private static List<String> read(double x, double y) throws Exception {
    browser.picture("#stage");
    double[] image = box("#stage img");
    browser.mouse("mouseMoved", image[0] + x / 100 * image[2], image[1] + (80 - y) / 80 * image[3]);
    List<String> values = new ArrayList<>();
    browser
        .eval(
            "[...document.querySelectorAll('#readout dd')].map((d) =>"
                + " d.textContent.replace(/\\u00a0/g, ''))")
        .forEach(value -> values.add(value.asText()));
    return values;
  }

  /** A pixel of what lies over the picture: red, green, blue, opacity. */
  private static int[] overlay(double x, double y) throws Exception {
    JsonNode pixel =
        pixels(
            "overlay",
            "Math.floor("
                + x / 100
                + " * o.width), Math.floor("
                + (80 - y) / 80
                + " * o.height), 1, 1");
    return new int[] {
      pixel.get(0).asInt(), pixel.get(1).asInt(), pixel.get(2).asInt(), pixel.get(3).asInt()
    };
  }

  private static int hatched() throws Exception {
    int sum = 0;
    for (int k = 0; k < 60; k++) {
      sum += overlay(21 + k * 0.1, 25)[3] > 0 ? 1 : 0;
    }
    return sum;
  }

  private static void click(String selector) throws Exception {
    browser.eval("document.querySelector('" + selector + "').click()");
    browser.settle();
  }

  private static void drag(double x, double y, double dx, double dy) throws Exception {
    browser.mouse("mousePressed", x, y);
    for (int i = 1; i <= 10; i++) {
      browser.mouse("mouseMoved", x + dx * i / 10, y + dy * i / 10);
    }
    browser.mouse("mouseReleased", x + dx, y + dy);
    browser.settle();
  }

  /** An element's box on the screen: left, top, width, height. */
  private static double[] box(String selector) throws Exception {
    JsonNode box =
        browser.eval(
            "(() => { const r = document.querySelector('"
                + selector
                + "').getBoundingClientRect(); return [r.x, r.y, r.width, r.height]; })()");
    return new double[] {
      box.get(0).asDouble(), box.get(1).asDouble(), box.get(2).asDouble(), box.get(3).asDouble()
    };
  }

  /** Pixels of a canvas, read from a copy: red, green, blue, opacity, and so on. */
  private static JsonNode pixels(String id, String box) throws Exception {
    return browser.eval(
        "(() => { const o = document.getElementById('"
            + id
            + "'); const c = document.createElement('canvas'); c.width = o.width; c.height ="
            + " o.height; const g = c.getContext('2d', { willReadFrequently: true });"
            + " g.drawImage(o, 0, 0); return [...g.getImageData("
            + box
            + ").data]; })()");
  }

  /** How bright the words below the section are, 0 to 255. */
  private static double inkOfSection() throws Exception {
    JsonNode data =
        pixels(
            "section-view",
            "0, Math.floor(o.height * 0.905), o.width, Math.floor(o.height * 0.09)");
    double sum = 0;
    int count = 0;
    for (int i = 0; i < data.size(); i += 4) {
      if (data.get(i + 3).asInt() > 250) {
        sum += data.get(i).asInt();
        count++;
      }
    }
    assertTrue(count > 20, "words are there");
    return sum / count;
  }
}
