package plyscape.report;

import plyscape.plan.Landscape;
import plyscape.text.Slug;

/** The canvas of the solid with what turns it. Drawn by the page's scripts. */
final class SolidPart {

  private SolidPart() {}

  static void write(Html page, Landscape plan) {
    page.raw("<section id=\"view3d\">\n<h2>The panel as a solid</h2>\n")
        .raw("<canvas class=\"wide\" id=\"solid\" tabindex=\"0\" role=\"img\"></canvas>\n")
        .raw("<canvas class=\"wide\" id=\"solid-paper\" aria-hidden=\"true\"></canvas>\n")
        .raw("<p id=\"solid-words\"></p>\n<div class=\"controls solid-controls\">");
    button(page, "turn-left", "Turn left");
    button(page, "turn-right", "Turn right");
    button(page, "tilt-up", "From higher");
    button(page, "tilt-down", "From lower");
    button(page, "nearer", "Nearer");
    button(page, "farther", "Farther");
    button(page, "view-start", "As at first");
    page.raw(
            "<label>Heights <input type=\"range\" id=\"stretch\" min=\"1\" max=\"6\" step=\"0.25\""
                + " value=\"2\"></label>")
        .raw("<button type=\"button\" id=\"solid-save\" data-name=\"")
        .raw(Slug.of(plan.job().title()) + "-solid.png")
        .raw("\">Save a picture</button></div>\n")
        .raw(
            "<p class=\"hint\">Drag to turn, pinch to come nearer, two fingers or Shift to slide;"
                + " with keys: arrows, + and -, Home.")
        .raw(" Walls show the plies that they cut through.</p>\n</section>\n");
  }

  private static void button(Html page, String id, String words) {
    page.raw("<button type=\"button\" id=\"" + id + "\">" + words + "</button>");
  }
}
