package plyscape.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.render.HandPlan;

/**
 * The page in a real browser, headless Chromium: a script of the test's own, put into a copy of the
 * page, points, clicks and drags, and writes down what it finds. Not in the default run, as it
 * needs the browser: {@code mvn test -Dgroups=browser -DexcludedTags=}.
 */
@Tag("browser")
class ReportInBrowserTest {

  private static final String CATCH =
      "<script>window.faults=[];window.addEventListener('error',e=>faults.push(String(e.message)));document.addEventListener('securitypolicyviolation',e=>faults.push('blocked"
          + " '+e.blockedURI));</script>";

  private static final String PROBE =
      """
      <script>
      (function () {
        const out = { faults: window.faults };
        const get = (id) => document.getElementById(id);
        const stage = get('stage');
        const image = stage.querySelector('img').getBoundingClientRect();
        const point = (type, x, y, target) => (target || stage).dispatchEvent(new PointerEvent(type, {
          clientX: image.left + x / 100 * image.width, clientY: image.top + (80 - y) / 80 * image.height, pointerId: 1, bubbles: true }));
        const read = () => [...get('readout').querySelectorAll('dd')].map((d) => d.textContent.replace(/\\u00a0/g, ''));
        point('pointermove', 80, 40);
        out.bar = read();
        point('pointermove', 2, 2);
        out.border = read();
        const overlay = get('overlay');
        const pixel = (x, y) => [...overlay.getContext('2d').getImageData(
          Math.floor(x / 100 * overlay.width), Math.floor((80 - y) / 80 * overlay.height), 1, 1).data];
        out.before = pixel(80, 40);
        document.querySelector('.layer[value="4"]').click();
        out.hidden = pixel(80, 40);
        out.others = pixel(25, 25);
        get('all-on').click();
        document.querySelector('input[value=risk]').click();
        out.risk = pixel(25, 25);
        out.riskKey = !get('risk-key').hidden;
        document.querySelector('input[value=zones]').click();
        out.zone = pixel(80, 40)[3];
        document.querySelector('input[value=colours]').click();
        get('numbers').click();
        out.labels = getComputedStyle(get('labels')).display !== 'none' ? get('labels').children.length : 0;
        get('patterns').click();
        let hatch = 0;
        for (let k = 0; k < 60; k++) hatch += pixel(21 + k * 0.1, 25)[3] > 0 ? 1 : 0;
        out.hatch = hatch;
        out.section = get('section-view').getAttribute('aria-label');
        const handle = get('handle-b');
        for (let k = 0; k < 40; k++) handle.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowLeft', bubbles: true }));
        out.shorter = get('section-view').getAttribute('aria-label');
        out.end = Number(handle.getAttribute('cx'));
        const solid = get('solid');
        const gl = solid.getContext('webgl');
        out.triangles = Number(solid.dataset.triangles);
        const tones = new Set();
        const dot = new Uint8Array(4);
        for (let x = 0; x < solid.width; x += 7) for (let y = 0; y < solid.height; y += 7) {
          gl.readPixels(x, y, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, dot);
          tones.add(dot.join());
        }
        out.tones = tones.size;
        out.glError = gl.getError();
        out.counts = { tables: document.querySelectorAll('table').length, layers: document.querySelectorAll('.layer').length,
          plies: document.querySelectorAll('#plies tbody tr').length, bars: document.querySelectorAll('.timebar rect').length,
          warnings: document.querySelectorAll('#warnings li').length, injected: document.querySelectorAll('b.evil').length };
        const pre = document.createElement('pre');
        pre.id = 'probe';
        pre.textContent = 'PROBE' + btoa(unescape(encodeURIComponent(JSON.stringify(out)))) + 'END';
        document.body.append(pre);
      })();
      </script>
      """;

  @TempDir Path directory;

  @Test
  void page_answersPointsClicksAndDrags() throws Exception {
    String page =
        HtmlReportTest.page(HandPlan.make("<b class=evil>meadow</b>"))
            .replace("</head>", CATCH + "</head>")
            .replace("</body>", PROBE + "</body>");
    Path file = Files.writeString(directory.resolve("report.html"), page);
    String log = run(file, "--dump-dom");
    Matcher found = Pattern.compile("PROBE([A-Za-z0-9+/=]+)END").matcher(log);
    assertTrue(found.find(), log.substring(Math.max(log.length() - 2000, 0)));
    JsonNode out =
        new ObjectMapper().readTree(java.util.Base64.getDecoder().decode(found.group(1)));
    assertEquals("[]", out.get("faults").toString());
    assertEquals("4 deep blue", out.get("bar").get(0).asText());
    assertEquals("3.500 mm deep", out.get("bar").get(1).asText());
    assertEquals("3.400 mm", out.get("bar").get(2).asText());
    assertTrue(
        out.get("bar").get(3).asText().startsWith("0.500 mm, needed 0.1"),
        out.get("bar").toString());
    assertEquals("river", out.get("bar").get(5).asText());
    assertTrue(
        out.get("bar").get(7).asText().startsWith("412750, 5601350"), out.get("bar").toString());
    assertTrue(out.get("border").get(0).asText().contains("border"), out.get("border").toString());
    assertEquals(0, out.get("before").get(3).asInt(), "nothing over the picture at first");
    assertTrue(out.get("hidden").get(3).asInt() > 200, "a layer switched off is covered");
    assertEquals(0, out.get("others").get(3).asInt());
    assertTrue(out.get("risk").get(3).asInt() > 200 && out.get("riskKey").asBoolean());
    assertTrue(out.get("zone").asInt() > 200);
    assertTrue(out.get("labels").asInt() >= 4);
    assertTrue(
        out.get("hatch").asInt() > 3 && out.get("hatch").asInt() < 57,
        "a pattern, not a flat tone");
    assertTrue(out.get("section").asText().contains("deep blue"), out.get("section").asText());
    assertEquals(58, out.get("end").asDouble(), 1e-9);
    assertTrue(
        !out.get("shorter").asText().contains("deep blue"),
        "the shorter section ends before the bar");
    assertTrue(out.get("triangles").asInt() > 100);
    assertTrue(out.get("tones").asInt() > 8, "the solid shows several plies, lit");
    assertEquals(0, out.get("glError").asInt());
    JsonNode counts = out.get("counts");
    assertEquals(5, counts.get("plies").asInt());
    assertEquals(4, counts.get("layers").asInt());
    assertEquals(2, counts.get("bars").asInt());
    assertEquals(1, counts.get("warnings").asInt());
    assertEquals(0, counts.get("injected").asInt());
    // Plies, zones, what was given to neighbours, passes, paths.
    assertEquals(5, counts.get("tables").asInt());
  }

  private String run(Path page, String what) throws Exception {
    Process browser =
        new ProcessBuilder(
                "chromium",
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--enable-unsafe-swiftshader",
                "--use-angle=swiftshader",
                "--user-data-dir=" + directory.resolve("profile"),
                "--virtual-time-budget=5000",
                "--window-size=1200,900",
                what,
                page.toUri().toString())
            .redirectError(directory.resolve("browser.log").toFile())
            .start();
    String out = new String(browser.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(browser.waitFor(90, TimeUnit.SECONDS));
    return out;
  }
}
