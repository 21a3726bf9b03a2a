package plyscape.terrain.crs;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import plyscape.fault.Place;
import plyscape.fault.Warnings;

/**
 * Reads the CRS from a .prj file that lies beside a raster which can't hold one: well-known text, a
 * bare EPSG code, or the older lines of keyword and value (Projection, Zone, Datum), of which UTM
 * and degrees are understood. A CRS that is a common one by its code or name is taken by its code.
 */
public final class ProjectionFile {

  /** The code that a text ends with, for the whole of it: WKT 1 and WKT 2. */
  private static final Pattern CODE =
      Pattern.compile("(?:AUTHORITY|ID)\\[\"EPSG\",\\s*\"?(\\d{4,6})\"?\\s*\\]\\s*\\]\\s*$");

  /** Names as one large maker of map software writes them, without codes. */
  private static final Pattern UTM_NAME =
      Pattern.compile("^PROJCS\\[\"(WGS_1984|ETRS_1989|NAD_1983)_UTM_Zone_(\\d{1,2})([NS])\",.*");

  private ProjectionFile() {}

  /**
   * The CRS of the raster's .prj file.
   *
   * @param warnings gets one when the file says something that isn't understood
   * @return no CRS when there is no such file
   * @throws IOException when it can't be read
   */
  public static GroundCrs beside(Path raster, Warnings warnings) throws IOException {
    String name = raster.getFileName().toString();
    int dot = name.lastIndexOf('.');
    String stem = dot > 0 ? name.substring(0, dot) : name;
    for (String ending : new String[] {".prj", ".PRJ"}) {
      Path file = raster.resolveSibling(stem + ending);
      if (Files.isRegularFile(file)) {
        String text = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
        String id = id(text);
        if (!id.isEmpty()) {
          return CrsLookup.describe(id, Place.file(file.toString()));
        }
        if (!text.replace("\uFEFF", "").isBlank()) {
          warnings.add(
              "prj-unknown",
              "the CRS in " + file.getFileName() + " isn't understood; set terrain.crs",
              name);
        }
      }
    }
    return GroundCrs.NONE;
  }

  /** The CRS that the text of such a file means, a code or WKT; "" when it isn't understood. */
  public static String id(String text) {
    String plain = text.replace("\uFEFF", "").strip();
    return plain.contains("[") ? shortest(plain) : code(plain);
  }

  /** The EPSG code of a text where it has one or a well-known name, else the text. */
  public static String shortest(String wkt) {
    Matcher code = CODE.matcher(wkt);
    if (code.find()) {
      return "EPSG:" + code.group(1);
    }
    if (wkt.matches("(?s)GEOGCS\\[\"GCS_WGS_1984\".*UNIT\\[\"Degree\".*")) {
      return CrsLookup.WGS_84;
    }
    boolean metres =
        wkt.matches("(?s).*UNIT\\[\"Met(?:er|re)\",\\s*1(?:\\.0*)?\\s*\\]\\s*\\]\\s*$");
    Matcher utm = UTM_NAME.matcher(wkt.replaceAll("\\s*\\R\\s*", ""));
    if (metres && utm.matches()) {
      String found = utm(utm.group(1), Integer.parseInt(utm.group(2)), utm.group(3).equals("S"));
      return found.isEmpty() ? wkt : found;
    }
    return wkt;
  }

  private static String utm(String datum, int zone, boolean south) {
    int base =
        switch (datum.replaceAll("[_ ]", "").toUpperCase(Locale.ROOT)) {
          case "WGS1984", "WGS84" -> south ? 32700 : 32600;
          case "ETRS1989", "ETRS89" -> zone >= 28 && zone <= 38 && !south ? 25800 : 0;
          case "NAD1983", "NAD83" -> zone <= 23 && !south ? 26900 : 0;
          default -> 0;
        };
    return base == 0 || zone < 1 || zone > 60 ? "" : "EPSG:" + (base + zone);
  }

  /** A code of the text, or of lines of keyword and value; "" when it isn't understood. */
  private static String code(String text) {
    if (text.matches("(?i)EPSG:\\d{4,6}")) {
      return text.toUpperCase(Locale.ROOT);
    }
    Map<String, String> lines = new TreeMap<>();
    text.lines()
        .map(line -> line.strip().split("\\s+", 2))
        .filter(words -> words.length == 2)
        .forEach(words -> lines.put(words[0].toLowerCase(Locale.ROOT), words[1].strip()));
    String projection = lines.getOrDefault("projection", "").toUpperCase(Locale.ROOT);
    String datum = lines.getOrDefault("datum", "");
    if (projection.equals("GEOGRAPHIC") && datum.toUpperCase(Locale.ROOT).matches("WGS_?(19)?84")) {
      return CrsLookup.WGS_84;
    }
    String zone = lines.getOrDefault("zone", "");
    boolean metres =
        lines.getOrDefault("units", "METERS").toUpperCase(Locale.ROOT).matches("MET.*");
    if (projection.equals("UTM") && zone.matches("-?\\d{1,2}") && metres) {
      int number = Integer.parseInt(zone);
      boolean south = number < 0 || lines.getOrDefault("yshift", "0").matches("10000000(\\.0*)?");
      return utm(datum, Math.abs(number), south);
    }
    return "";
  }
}
