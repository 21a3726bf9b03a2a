package plyscape.render;

import java.util.Locale;
import plyscape.layup.PlyDepth;
import plyscape.plan.Landscape;
import plyscape.text.Numbers;
import plyscape.text.Template;
import plyscape.text.Visible;

/**
 * The top view for a terminal: two rows of the panel in one row of half blocks in colour, or a
 * letter a ply where the terminal has no colour. A legend follows. Nothing is printed here.
 */
public final class TerminalPreview {

  /** What the terminal can show. */
  public enum Colour {
    /** 24 bits, {@code ESC[38;2;r;g;bm}. */
    FULL,
    /** The 6 x 6 x 6 cube of 256 colours, {@code ESC[38;5;nm}. */
    CUBE,
    /** Letters only, plain ASCII. */
    NONE
  }

  private static final String LETTERS =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789";
  private static final String RESET = "\u001b[0m";

  /** A character cell of a terminal is about twice as high as wide. */
  private static final double TALL = 2;

  private TerminalPreview() {}

  /**
   * What a terminal says that it can, by the usual variables COLORTERM and TERM; null stands for
   * unset.
   */
  public static Colour colour(String colorTerm, String term) {
    String c = colorTerm == null ? "" : colorTerm.toLowerCase(Locale.ROOT);
    if (c.contains("truecolor") || c.contains("24bit")) {
      return Colour.FULL;
    }
    return term != null && term.contains("256color") ? Colour.CUBE : Colour.NONE;
  }

  /** The picture in at most so many columns, then the legend; lines end with LF. */
  public static String text(Landscape plan, int columns, Colour colour) {
    double width = plan.job().panel().widthMm();
    double height = plan.job().panel().heightMm();
    int across = Math.max(columns, 8);
    int down = Math.max((int) Math.round(across * height / width / TALL), 1);
    StringBuilder out = new StringBuilder();
    if (colour == Colour.NONE) {
      short[] plies = plies(plan, across, down);
      for (int row = 0; row < down; row++) {
        for (int column = 0; column < across; column++) {
          out.append(letter(plies[row * across + column]));
        }
        out.append('\n');
      }
    } else {
      halfBlocks(out, plan, plies(plan, across, 2 * down), across, down, colour);
    }
    legend(out.append('\n'), plan, colour);
    return out.toString();
  }

  /**
   * Sampled at the middles of cells that needn't be square: rows are placed by their share of the
   * height.
   */
  private static short[] plies(Landscape plan, int columns, int rows) {
    CellMap map = CellMap.of(plan, 4 * Math.max(columns, rows));
    short[] plies = new short[columns * rows];
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        int x = Math.min((int) ((column + 0.5) / columns * map.columns()), map.columns() - 1);
        int y = Math.min((int) ((row + 0.5) / rows * map.rows()), map.rows() - 1);
        plies[row * columns + column] = (short) map.ply(x, y);
      }
    }
    return plies;
  }

  private static void halfBlocks(
      StringBuilder out, Landscape plan, short[] plies, int across, int down, Colour colour) {
    for (int row = 0; row < down; row++) {
      int beforeUpper = -1;
      int beforeLower = -1;
      for (int column = 0; column < across; column++) {
        int upper = rgb(plan, plies[2 * row * across + column]);
        int lower = rgb(plan, plies[(2 * row + 1) * across + column]);
        if (upper != beforeUpper) {
          out.append(code(38, upper, colour));
        }
        if (lower != beforeLower) {
          out.append(code(48, lower, colour));
        }
        out.append('\u2580');
        beforeUpper = upper;
        beforeLower = lower;
      }
      out.append(RESET).append('\n');
    }
  }

  private static void legend(StringBuilder out, Landscape plan, Colour colour) {
    for (PlyDepth depth : plan.depths()) {
      int number = depth.ply().number();
      double share = PlyLegend.share(plan, number);
      if (share > 0) {
        out.append(
            Template.fill(
                "%s %s %s, %s, %.1f %%\n",
                colour == Colour.NONE
                    ? " " + letter(number) + " "
                    : code(48, depth.ply().rgb(), colour) + "   " + RESET,
                number,
                Visible.line(depth.ply().name()),
                plan.cutMm(number).open()
                    ? plan.cutMm(number).cutText() + " mm"
                    : depth.targetMm() > 0
                        ? "cut to " + Numbers.fixed(depth.targetMm(), 3) + " mm"
                        : "uncut",
                100 * share));
      }
    }
    if (colour == Colour.NONE) {
      out.append(" . border\n");
    }
  }

  private static char letter(int ply) {
    return ply == 0 ? '.' : ply <= LETTERS.length() ? LETTERS.charAt(ply - 1) : '#';
  }

  private static int rgb(Landscape plan, int ply) {
    return plan.depths().of(Math.max(ply, 1)).ply().rgb();
  }

  private static String code(int kind, int rgb, Colour colour) {
    int red = rgb >> 16 & 255;
    int green = rgb >> 8 & 255;
    int blue = rgb & 255;
    return colour == Colour.FULL
        ? "\u001b[" + kind + ";2;" + red + ";" + green + ";" + blue + "m"
        : "\u001b[" + kind + ";5;" + (16 + 36 * cube(red) + 6 * cube(green) + cube(blue)) + "m";
  }

  /** The cube's levels are 0, 95, 135, 175, 215, 255. */
  private static int cube(int channel) {
    return channel < 48 ? 0 : channel < 115 ? 1 : (channel - 35) / 40;
  }
}
