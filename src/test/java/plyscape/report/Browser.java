package plyscape.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import javax.imageio.ImageIO;

/**
 * Headless Chromium with software drawing, driven over a pipe by the DevTools protocol: real mouse,
 * fingers and keys, any screen, light or dark, printing, and everything that the console and the
 * network saw.
 */
public final class Browser implements AutoCloseable {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int PATIENCE_S = 60;

  private final Process process;
  private final BlockingQueue<JsonNode> incoming = new LinkedBlockingQueue<>();
  private final List<JsonNode> events = new ArrayList<>();
  private String session;
  private int calls;

  /**
   * Starts a browser.
   *
   * @param directory for its profile and log; gone afterwards at the caller's care
   */
  public Browser(Path directory, String... flags) throws Exception {
    Files.createDirectories(directory);
    List<String> command =
        new ArrayList<>(
            List.of(
                "sh",
                "-c",
                // Its two pipes are our output and input.
                "exec chromium \"$@\" 3<&0 4>&1 1>/dev/null 2>\"$0\" 0</dev/null",
                directory.resolve("browser.log").toString(),
                "--headless",
                "--no-sandbox",
                "--remote-debugging-pipe",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--enable-unsafe-swiftshader",
                "--use-angle=swiftshader",
                "--user-data-dir=" + directory.resolve("profile")));
    command.addAll(List.of(flags));
    process = new ProcessBuilder(command).start();
    Thread reader = new Thread(this::read, "browser");
    reader.setDaemon(true);
    reader.start();
    String target =
        call("Target.createTarget", params().put("url", "about:blank")).get("targetId").asText();
    session =
        call("Target.attachToTarget", params().put("targetId", target).put("flatten", true))
            .get("sessionId")
            .asText();
    for (String domain : List.of("Page", "Runtime", "Network", "Log")) {
      call(domain + ".enable", params());
    }
  }

  static ObjectNode params() {
    return JSON.createObjectNode();
  }

  /** Calls a method of the protocol and gives its result. */
  JsonNode call(String method, ObjectNode params) throws Exception {
    ObjectNode message = params().put("id", ++calls).put("method", method);
    message.set("params", params);
    if (session != null) {
      message.put("sessionId", session);
    }
    process.getOutputStream().write(JSON.writeValueAsBytes(message));
    process.getOutputStream().write(0);
    process.getOutputStream().flush();
    while (true) {
      JsonNode answer = incoming.poll(PATIENCE_S, TimeUnit.SECONDS);
      if (answer == null) {
        throw new IOException("no answer to " + method);
      }
      if (!answer.has("id")) {
        events.add(answer);
      } else if (answer.get("id").asInt() == calls) {
        if (answer.has("error")) {
          throw new IOException(method + ": " + answer.get("error"));
        }
        return answer.get("result");
      }
    }
  }

  /** A screen; a phone's has fingers. */
  public void screen(int width, int height, boolean phone) throws Exception {
    call(
        "Emulation.setDeviceMetricsOverride",
        params()
            .put("width", width)
            .put("height", height)
            .put("deviceScaleFactor", phone ? 2 : 1)
            .put("mobile", phone));
    call("Emulation.setTouchEmulationEnabled", params().put("enabled", phone));
  }

  public void dark(boolean dark) throws Exception {
    ObjectNode media = params();
    media
        .putArray("features")
        .addObject()
        .put("name", "prefers-color-scheme")
        .put("value", dark ? "dark" : "light");
    call("Emulation.setEmulatedMedia", media);
  }

  /** Opens a page and waits until it is drawn. */
  public void open(Path page) throws Exception {
    events.clear();
    call("Page.navigate", params().put("url", page.toUri().toString()));
    eval(
        "new Promise((done) => document.readyState === 'complete' ? done() :"
            + " addEventListener('load', done))");
    settle();
  }

  /** Waits for the next two frames. */
  public void settle() throws Exception {
    eval("new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done())))");
  }

  /** The value of an expression in the page; a promise is waited for. */
  public JsonNode eval(String expression) throws Exception {
    JsonNode answer =
        call(
            "Runtime.evaluate",
            params()
                .put("expression", expression)
                .put("returnByValue", true)
                .put("awaitPromise", true));
    if (answer.has("exceptionDetails")) {
      throw new IOException(expression + ": " + answer.get("exceptionDetails"));
    }
    return answer.get("result").path("value");
  }

  void mouse(String type, double x, double y) throws Exception {
    call(
        "Input.dispatchMouseEvent",
        params()
            .put("type", type)
            .put("x", x)
            .put("y", y)
            .put("button", type.equals("mouseMoved") ? "none" : "left")
            .put("buttons", type.equals("mouseReleased") ? 0 : 1)
            .put("clickCount", 1));
  }

  /** Fingers on the screen: x, y, x, y ...; none ends the touch. */
  void fingers(String type, double... xy) throws Exception {
    ObjectNode touch = params().put("type", type);
    var points = touch.putArray("touchPoints");
    for (int i = 0; i < xy.length; i += 2) {
      points.addObject().put("x", xy[i]).put("y", xy[i + 1]).put("id", i / 2);
    }
    call("Input.dispatchTouchEvent", touch);
  }

  void key(String name) throws Exception {
    call("Input.dispatchKeyEvent", params().put("type", "keyDown").put("key", name));
    call("Input.dispatchKeyEvent", params().put("type", "keyUp").put("key", name));
  }

  /** What an element looks like now. */
  BufferedImage picture(String selector) throws Exception {
    JsonNode box =
        eval(
            "(() => { const e = document.querySelector('"
                + selector
                + "'); e.scrollIntoView({ block: 'center', behavior: 'instant' });"
                + " const r = e.getBoundingClientRect();"
                + " return [r.x + scrollX, r.y + scrollY, r.width, r.height]; })()");
    settle();
    ObjectNode shot = params().put("format", "png");
    shot.putObject("clip")
        .put("x", box.get(0).asDouble())
        .put("y", box.get(1).asDouble())
        .put("width", box.get(2).asDouble())
        .put("height", box.get(3).asDouble())
        .put("scale", 1);
    byte[] png =
        Base64.getDecoder().decode(call("Page.captureScreenshot", shot).get("data").asText());
    return ImageIO.read(new ByteArrayInputStream(png));
  }

  /** The page on paper, as a PDF file. */
  public byte[] pdf(double widthInch, double heightInch) throws Exception {
    return Base64.getDecoder()
        .decode(
            call(
                    "Page.printToPDF",
                    params().put("paperWidth", widthInch).put("paperHeight", heightInch))
                .get("data")
                .asText());
  }

  /** Everything that a console would show in red, and what scripts said. */
  public List<String> faults() throws Exception {
    settle();
    return events.stream()
        .filter(
            e ->
                List.of("Runtime.exceptionThrown", "Runtime.consoleAPICalled", "Log.entryAdded")
                    .contains(e.get("method").asText()))
        .map(e -> e.get("params").toString())
        .filter(text -> !text.contains("GL Driver Message"))
        .toList();
  }

  /** Addresses that were asked for, data blocks of the page itself left out. */
  public List<String> requests() {
    return events.stream()
        .filter(e -> e.get("method").asText().equals("Network.requestWillBeSent"))
        .map(e -> e.get("params").get("request").get("url").asText())
        .filter(url -> !url.startsWith("data:"))
        .toList();
  }

  private void read() {
    ByteArrayOutputStream message = new ByteArrayOutputStream();
    try (InputStream in = process.getInputStream()) {
      byte[] buffer = new byte[1 << 16];
      for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
        for (int i = 0; i < n; i++) {
          if (buffer[i] != 0) {
            message.write(buffer[i]);
            continue;
          }
          incoming.add(JSON.readTree(message.toString(StandardCharsets.UTF_8)));
          message.reset();
        }
      }
    } catch (IOException e) {
      // The browser has ended; whoever waits for an answer says so.
    }
  }

  @Override
  public void close() throws Exception {
    process.destroy();
    if (!process.waitFor(10, TimeUnit.SECONDS)) {
      process.destroyForcibly().waitFor();
    }
  }
}
