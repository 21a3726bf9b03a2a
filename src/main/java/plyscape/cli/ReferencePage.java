package plyscape.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import plyscape.cli.process.VersionText;

/**
 * Manual pages of the files that a user writes, section 5, made of the reference's tables: the same
 * text that the README links to.
 */
final class ReferencePage {

  /** Files that have a page. */
  static final List<String> TOPICS = List.of("job", "layup");

  private final StringBuilder out = new StringBuilder();

  private ReferencePage() {}

  /** The page of a topic in the man macros of roff. */
  static String text(String topic) {
    ReferencePage page = new ReferencePage();
    String title = "PLYSCAPE-" + topic.toUpperCase(Locale.ROOT);
    page.out.append(".TH ").append(title).append(" 5 \"\" \"plyscape ");
    page.out.append(VersionText.text()).append("\" \"plyscape\"\n.SH NAME\n");
    page.out.append("plyscape-").append(topic).append(" \\- keys of ").append(topic);
    page.out.append(".yaml\n.SH DESCRIPTION\n");
    source(topic).lines().skip(1).forEach(page::line);
    return page.out.toString();
  }

  /** The reference itself, Markdown. */
  static String source(String topic) {
    String name = "/plyscape/reference/" + topic + ".md";
    try (InputStream in = ReferencePage.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void line(String line) {
    if (line.startsWith("## ")) {
      out.append(".SH ").append(escape(line.substring(3).toUpperCase(Locale.ROOT))).append('\n');
    } else if (line.startsWith("|")) {
      row(line);
    } else if (!line.isBlank()) {
      out.append(escape(line)).append('\n');
    }
  }

  /** A row as a tagged paragraph; heads and rules of tables are left out. */
  private void row(String line) {
    String[] cells = line.substring(1).split("\\|");
    String first = cells[0].strip();
    if (first.startsWith("---") || List.of("key", "format", "limit").contains(first)) {
      return;
    }
    out.append(".TP\n\\fB").append(escape(first)).append("\\fR");
    if (cells.length > 2 && !cells[1].isBlank() && !cells[1].strip().equals("-")) {
      out.append(" (").append(escape(cells[1].strip())).append(')');
    }
    out.append('\n').append(escape(cells[cells.length - 1].strip())).append('\n');
  }

  private static String escape(String text) {
    String plain = text.replace("`", "").replace("\\", "\\e").replace("-", "\\-");
    return plain.startsWith(".") || plain.startsWith("'") ? "\\&" + plain : plain;
  }
}
