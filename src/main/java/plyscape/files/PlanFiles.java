package plyscape.files;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import plyscape.text.Slug;

/**
 * Names of the files that {@code plan} and {@code preview} write, relative to the output's
 * directory, with {@code /}.
 */
public final class PlanFiles {

  /** The plan's figures. */
  public static final String PLAN = "plan.json";

  /** The page for a person. */
  public static final String REPORT = "report.html";

  /** The sheet that hangs at the machine. */
  public static final String SETUP = "setup.html";

  /** The page over several panels. */
  public static final String INDEX = "index.html";

  /** The top view; alone, the output of {@code preview}. */
  public static final String PREVIEW = "preview.png";

  /** The cross-section. */
  public static final String SECTION = "section.png";

  /** The carved block. */
  public static final String BLOCK = "block.png";

  /** The map of the colour risk. */
  public static final String RISK = "risk.png";

  /** All layers on one sheet. */
  public static final String SHEET = "sheet.svg";

  /** Figures of a landscape over several panels. */
  public static final String TILES = "tiles.json";

  /** Its picture. */
  public static final String OVERVIEW = "overview.png";

  /** Depths of sculpted faces. */
  public static final String FACES = "faces/faces.json";

  /** The name, beside {@link #FACES}, of the relief that they follow. */
  public static final String RELIEF = "relief.png";

  private static final String LAYERS = "layers";
  private static final String PASSES = "passes";

  private PlanFiles() {}

  /** The plan.json that a directory, or the file itself, stands for. */
  public static Path plan(Path place) {
    return Files.isDirectory(place) ? place.resolve(PLAN) : place;
  }

  /** A ply's layer without folder and ending, such as {@code 02-wood}. */
  public static String layerName(int ply, String name) {
    return numbered(ply, name);
  }

  /** Whether a file's name is that of a ply's layer in SVG, whatever the ply is called. */
  public static boolean isLayer(String fileName, int ply) {
    return fileName.endsWith(".svg") && fileName.matches("0*" + ply + "-.*");
  }

  /** A file among the layers. */
  public static String layer(String fileName) {
    return LAYERS + "/" + fileName;
  }

  /** Where the layers of a plan lie. */
  public static Path layers(Path directory) {
    return directory.resolve(LAYERS);
  }

  /**
   * File name of the number-th program in cutting order, from 1, such as {@code 01-end-mill-3.nc}.
   */
  public static String passName(int number, String tool) {
    return numbered(number, tool) + ".nc";
  }

  /** A program's file. */
  public static String pass(String fileName) {
    return PASSES + "/" + fileName;
  }

  /** Where the programs of a plan lie. */
  public static Path passes(Path directory) {
    return directory.resolve(PASSES);
  }

  /** The relief's file. */
  public static String relief() {
    return FACES.substring(0, FACES.lastIndexOf('/') + 1) + RELIEF;
  }

  /** Name and directory of a panel of several, both from 1, such as {@code tile-1-2}. */
  public static String tile(int column, int row) {
    return "tile-" + column + "-" + row;
  }

  /** Regular expressions of all files of one panel's plan. */
  public static List<String> planPatterns() {
    return List.of(
        "plan\\.json",
        "(report|setup)\\.html",
        "(preview|section|block|risk|difference|finished)\\.png",
        "(sheet|overview)\\.(svg|png)",
        "faces/(faces\\.json|relief\\.png)",
        LAYERS + "/[^/]+\\.(svg|geojson|dxf)",
        PASSES + "/[^/]+\\.nc");
  }

  /** Regular expression of what {@link #tile} gives. */
  public static String tilePattern() {
    return "tile-\\d+-\\d+";
  }

  private static String numbered(int number, String name) {
    return (number < 10 ? "0" : "") + number + "-" + Slug.of(name);
  }
}
