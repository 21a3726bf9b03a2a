package plyscape.batch;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import plyscape.fault.IoReason;
import plyscape.fault.JobFault;
import plyscape.files.PlanFiles;
import plyscape.render.Thumbnail;
import plyscape.text.Durations;
import plyscape.text.Markup;
import plyscape.text.Numbers;
import plyscape.text.Template;

/**
 * {@code index.html} of a series: a row a job with its picture, cutting time, verdict and warnings,
 * to be searched and sorted. It holds all it shows; links lead to the jobs' own pages.
 */
public final class SeriesPage {

  /** Stands near the start of every such page, and of no other. */
  public static final String MARK = "<meta name=\"generator\" content=\"plyscape gather\">";

  private static final int LONGEST_PX = 160;

  private final Path directory;
  private final StringBuilder out = new StringBuilder();

  private SeriesPage(Path directory) {
    this.directory = directory;
  }

  /**
   * The page's text.
   *
   * @param directory where it will lie, for its links
   */
  public static String text(Gathered series, Path directory) {
    SeriesPage page = new SeriesPage(directory);
    page.head(series);
    List<String> pictures = series.entries().parallelStream().map(SeriesPage::picture).toList();
    for (int i = 0; i < pictures.size(); i++) {
      page.row(series.entries().get(i), pictures.get(i));
    }
    page.out
        .append("</tbody>\n</table>\n</main>\n<script>\n")
        .append(resource("series.js"))
        .append("</script>\n</body>\n</html>\n");
    return page.out.toString();
  }

  private void head(Gathered series) {
    int missing = series.missing().size();
    double total = series.merged().results().stream().mapToDouble(JobResult::totalS).sum();
    out.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
        .append(MARK)
        .append("\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
        .append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none';")
        .append(" img-src data:; style-src 'unsafe-inline'; script-src 'unsafe-inline'\">\n")
        .append("<title>Series of panels</title>\n<style>\n")
        .append(resource("series.css"))
        .append("</style>\n</head>\n<body>\n<main>\n<h1>Series of panels</h1>\n<p>")
        .append(series.list().size() + " jobs, ")
        .append(missing == 0 ? "all there" : "<b class=\"bad\">" + missing + " not there</b>")
        .append(", " + Durations.text(total) + " of cutting in all.</p>\n")
        .append("<p><label>Search <input type=\"search\" id=\"search\"></label>")
        .append(
            missing == 0
                ? ""
                : " <label><input type=\"checkbox\" id=\"missing\"> only what isn't there</label>")
        .append(" <span id=\"shown\" role=\"status\"></span></p>\n<table>\n<thead><tr>")
        .append("<th>Panel</th>");
    for (String name : new String[] {"Job", "Cutting", "Verdict", "Warnings", "Planned in"}) {
      out.append("<th aria-sort=\"none\"><button type=\"button\">" + name + "</button></th>");
    }
    out.append("</tr></thead>\n<tbody>\n");
  }

  private void row(Gathered.Entry entry, String picture) {
    JobResult result = entry.result();
    double total = result == null ? 0 : result.totalS();
    double seconds = result == null ? 0 : result.seconds();
    out.append(entry.whole() ? "<tr><td>" : "<tr class=\"gone\"><td>");
    String name = Markup.escape(entry.job());
    if (entry.folder() == null) {
      out.append("</td><td>" + name + "</td>");
    } else {
      String link = Markup.escape(link(entry.folder()));
      out.append("<a href=\"" + link + "\">").append(picture).append("</a></td><td>");
      out.append("<a href=\"" + link + "\">" + name + "</a></td>");
    }
    number(total, total > 0 ? Durations.text(total) : "");
    out.append(entry.whole() ? "<td>proved</td>" : "<td class=\"bad\">");
    out.append(entry.whole() ? "" : Markup.escape(entry.trouble()) + "</td>");
    number(warnings(result), codes(result));
    number(seconds, seconds > 0 ? Numbers.fixed(seconds, 1) + " s" : "");
    out.append("</tr>\n");
  }

  private void number(double value, String text) {
    out.append("<td data-value=\"" + Numbers.fixed(value, 3) + "\">")
        .append(Markup.escape(text) + "</td>");
  }

  private static int warnings(JobResult result) {
    return result == null
        ? 0
        : result.warnings().values().stream().mapToInt(Integer::intValue).sum();
  }

  private static String codes(JobResult result) {
    return result == null
        ? ""
        : result.warnings().entrySet().stream()
            .map(
                code ->
                    code.getValue() == 1 ? code.getKey() : code.getKey() + " " + code.getValue())
            .collect(Collectors.joining(", "));
  }

  private String link(Path folder) {
    String page =
        Files.exists(folder.resolve(PlanFiles.TILES)) ? PlanFiles.INDEX : PlanFiles.REPORT;
    Path from = directory.toAbsolutePath().normalize();
    return uri(from.relativize(folder.toAbsolutePath().normalize().resolve(page)));
  }

  /** Each part as a URI has it (RFC 3986). */
  private static String uri(Path relative) {
    StringBuilder text = new StringBuilder();
    for (Path part : relative) {
      text.append(text.length() == 0 ? "" : "/");
      for (byte b : part.toString().getBytes(StandardCharsets.UTF_8)) {
        boolean plain = b > 0 && (Character.isLetterOrDigit(b) || "-._~".indexOf(b) >= 0);
        text.append(plain ? Character.toString(b) : String.format(Locale.ROOT, "%%%02X", b & 0xff));
      }
    }
    return text.toString();
  }

  /** "" where there is no output. */
  private static String picture(Gathered.Entry entry) {
    if (entry.folder() == null) {
      return "";
    }
    Path one = entry.folder().resolve(PlanFiles.PREVIEW);
    Path file = Files.exists(one) ? one : entry.folder().resolve(PlanFiles.OVERVIEW);
    try {
      byte[] png = Thumbnail.png(Files.readAllBytes(file), LONGEST_PX);
      // Its size is in the header of a PNG (ISO 15948, 11.2.2): with it the page needn't wait for
      // it.
      ByteBuffer header = ByteBuffer.wrap(png);
      return Template.fill(
          "<img alt=\"The panel from above\" loading=\"lazy\" decoding=\"async\" width=\"%s\""
              + " height=\"%s\" src=\"data:image/png;base64,%s\">",
          header.getInt(16), header.getInt(20), Base64.getEncoder().encodeToString(png));
    } catch (IOException e) {
      throw new JobFault("can't read " + file + ": " + IoReason.of(e), "plan that job again");
    }
  }

  private static String resource(String name) {
    try (InputStream in = SeriesPage.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its own file " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
