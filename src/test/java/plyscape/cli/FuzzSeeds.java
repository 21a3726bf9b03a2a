package plyscape.cli;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import plyscape.terrain.AscText;

/** One whole small file for every reader, and the command that reads it. */
final class FuzzSeeds {

  private static final Path LAYOUTS = Path.of("src/test/resources/plyscape/terrain/layouts");

  private static final String PREVIEW = "preview -q";
  private static final String VERIFY = "verify -q --cell 0.2";

  /**
   * A reader to try.
   *
   * @param file what is changed, in the folder
   * @param args the command; a word with a dot or that names a folder is a path in it
   * @param share of the trials: less for what takes long
   */
  record Reader(String name, String file, String args, double share) {
    @Override
    public String toString() {
      return name;
    }
  }

  private static final List<String> TIFFS =
      List.of(
          "f32-feet",
          "f32-lzw-p3",
          "f32-zstd-p3-tiles",
          "f64-zstd-p3-big-high-first",
          "i16-lzw-p2-tiles",
          "i16-scaled",
          "i16-sparse",
          "f32-deflate-p3-high-first",
          "u16-packbits");

  static final List<Reader> READERS = readers();

  private static List<Reader> readers() {
    List<Reader> all = new ArrayList<>();
    all.add(new Reader("layup", "layup.yaml", "check -q layup.yaml", 2));
    all.add(new Reader("job", "full.yaml", PREVIEW + " full.yaml", 2));
    all.add(new Reader("shelf", "shelf.yaml", "suggest -q terrain.asc --veneers shelf.yaml", 0.5));
    all.add(
        new Reader(
            "readings",
            "readings.csv",
            "calibrate -q --force layup.yaml readings.csv -o new.yaml",
            2));
    all.add(
        new Reader(
            "ranges", "ranges.csv", "calibrate -q --force layup.yaml ranges.csv -o new.yaml", 1));
    all.add(new Reader("asc", "terrain.asc", PREVIEW + " job-asc.yaml", 2));
    all.add(new Reader("asc-prj", "placed.prj", PREVIEW + " job-placed.yaml", 1));
    all.add(new Reader("hgt", "N50E010.hgt", PREVIEW + " job-hgt.yaml", 0.2));
    all.add(new Reader("png-grey", "grey.png", PREVIEW + " job-grey.yaml", 2));
    all.add(new Reader("png-world", "grey.pgw", PREVIEW + " job-grey.yaml", 1));
    all.add(new Reader("png-terrarium", "terrarium.png", PREVIEW + " job-terrarium.yaml", 1));
    all.add(new Reader("png-terrain-rgb", "rgb.png", PREVIEW + " job-rgb.yaml", 1));
    for (String name : TIFFS) {
      all.add(new Reader(name, name + ".tif", PREVIEW + " job-" + name + ".yaml", 1));
    }
    all.add(new Reader("geojson", "map.geojson", PREVIEW + " job-geojson.yaml", 2));
    all.add(new Reader("outline", "outline.geojson", PREVIEW + " job-outline.yaml", 1));
    all.add(new Reader("geopackage", "map.gpkg", PREVIEW + " job-gpkg.yaml", 2));
    all.add(new Reader("classes", "classes.asc", PREVIEW + " job-classes.yaml", 1));
    all.add(new Reader("classes-tiff", "u8-lzw-p2.tif", PREVIEW + " job-classes-tiff.yaml", 1));
    all.add(new Reader("plan.json", "out/plan.json", VERIFY + " out", 2));
    all.add(new Reader("svg", "out/layers/02-low.svg", VERIFY + " out", 2));
    all.add(new Reader("gcode", "out/passes/01-mill.nc", VERIFY + " out", 2));
    all.add(
        new Reader(
            "resume", "out/passes/01-mill.nc", "resume -q --force out --from 60 -o rest.nc", 2));
    return List.copyOf(all);
  }

  private final Path folder;
  private final List<String> names;

  FuzzSeeds(Path folder) throws Exception {
    this.folder = folder;
    SmallJob small = new SmallJob(folder);
    job("asc", "file: terrain.asc", "");
    small.write(
        "layup.yaml",
        """
        name: small
        glue_line: 0.04
        glue_line_tolerance: 0.01
        measured_bottoms: {high: 1.02}
        flatness: 0.05
        plies: # top to bottom
          - {name: high, colour: "#dddddd", thickness: 1, tolerance: 0.05, grain: 0, wood: birch}
          - {name: low, colour: "#448844", thickness: 1, tolerance: 0.05}
          - {name: base, colour: "#884422", thickness: 1.2, tolerance: 0.05}
        """);
    small.write(
        "shelf.yaml",
        """
        glue_line: 0.04
        plies: 3
        veneers:
          - {name: birch, colour: "#eeddbb", thickness: 0.9, tolerance: 0.05, count: 4}
          - {name: oak, colour: "#aa8855", thickness: 0.9, tolerance: 0.05, count: 4}
          - {name: walnut, colour: "#553322", thickness: 0.6, tolerance: 0.05, wood: walnut, count: 4}
        """);
    small.write(
        "readings.csv",
        "ply,edge,depth,tolerance\nhigh,bottom,1.01,0.05\nlow,top,1.06,\n2,bottom,2.1,0.02\n");
    small.write("ranges.csv", "ply,from,to\nhigh,0.95,1.05\nlow,2.0,2.1\n");
    rasters();
    maps();
    small.write(
        "full.yaml",
        """
        layup: layup.yaml
        terrain:
          file: terrain.asc
          crop: [10, 10, 110, 110]
          crs: EPSG:32632
          plies: [high, low]
          bands: natural
          smoothing: 0.4
        panel: {width: 20, height: 20, border: 2}
        zones:
          - {name: wood, file: map.geojson, where: {kind: [wood, park], lanes: {min: 1}}, ply: low}
          - {name: road, file: map.geojson, where: {kind: road}, sink: 1, width: 2, keep: widen}
        tools:
          - {name: mill, shape: flat, diameter: 2, flute_length: 12, flutes: 2, rpm: 16000, feed: 1800, plunge: 500, stepdown: 1, stepover: 0.45}
        machine: {travel: [300, 300, 80], rapid: 4000, acceleration: 300, cornering: 0.02, safe_height: 4, z_error: 0.03, zero: lower-left, zero_z: top}
        clearance: {minimum: 0.10, method: rss}
        sanding: 0.10
        sanding_tolerance: 0.05
        top: leave
        minimum_floor: 0.3
        """);
    Path plan =
        small.write(
            "plan.yaml",
            """
            layup: layup.yaml
            terrain: {file: terrain.asc, plies: [high, low], smoothing: 0, crs: "EPSG:32632"}
            panel: {width: 20, height: 20, border: 2}
            tools: [{name: mill, shape: flat, diameter: 2}]
            minimum_floor: 0.3
            """);
    Run run = Run.of("plan", plan, "-o", folder.resolve("out"), "-q");
    if (run.code() != 0) {
      throw new IllegalStateException(run.err());
    }
    try (Stream<Path> walk = Files.walk(folder)) {
      names =
          walk.filter(Files::isRegularFile)
              .map(file -> file.getFileName().toString())
              .distinct()
              .sorted()
              .toList();
    }
  }

  /** Names of the files there are: a message must hold one of them. */
  List<String> names() {
    return names;
  }

  /** The command line of a reader. */
  Object[] args(Reader reader) {
    return Arrays.stream(reader.args().split(" "))
        .map(
            word ->
                names.contains(word) || word.equals("out") || word.matches("(new|rest)\\..*")
                    ? folder.resolve(word)
                    : word)
        .toArray();
  }

  private void job(String name, String terrain, String more) throws IOException {
    Files.writeString(
        folder.resolve("job-" + name + ".yaml"),
        "layup: layup.yaml\nterrain:\n  plies: [high, low]\n  smoothing: 0\n  "
            + terrain.replace("; ", "\n  ")
            + "\npanel: {width: 20, height: 20, border: 2}\nminimum_floor: 0.3\n"
            + more);
  }

  private void rasters() throws IOException {
    for (String name : TIFFS) {
      tiff(name);
    }
    tiff("u8-lzw-p2");
    Files.copy(folder.resolve("terrain.asc"), folder.resolve("placed.asc"));
    Files.writeString(
        folder.resolve("placed.prj"),
        "PROJCS[\"WGS 84 / UTM zone 32N\",GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\",SPHEROID[\"WGS 84\","
            + "6378137,298.257223563]],PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]],"
            + "PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"latitude_of_origin\",0],"
            + "PARAMETER[\"central_meridian\",9],PARAMETER[\"scale_factor\",0.9996],"
            + "PARAMETER[\"false_easting\",500000],PARAMETER[\"false_northing\",0],UNIT[\"metre\",1]]");
    job("placed", "file: placed.asc", "");
    short[] hgt = new short[1201 * 1201];
    for (int i = 0; i < hgt.length; i++) {
      hgt[i] = (short) (i / 1201 / 4 + i % 1201 / 8);
    }
    ByteBuffer bytes = ByteBuffer.allocate(2 * hgt.length).order(ByteOrder.BIG_ENDIAN);
    bytes.asShortBuffer().put(hgt);
    Files.write(folder.resolve("N50E010.hgt"), bytes.array());
    job("hgt", "file: N50E010.hgt; crop: [10.4, 50.4, 10.42, 50.42]; crop_crs: EPSG:4326", "");
    BufferedImage grey = new BufferedImage(12, 10, BufferedImage.TYPE_USHORT_GRAY);
    BufferedImage terrarium = new BufferedImage(12, 10, BufferedImage.TYPE_INT_RGB);
    BufferedImage rgb = new BufferedImage(12, 10, BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < 10; y++) {
      for (int x = 0; x < 12; x++) {
        int metres = 100 + 10 * x + 7 * y;
        grey.getRaster().setSample(x, y, 0, metres);
        terrarium.setRGB(x, y, (metres + 32768) << 8);
        rgb.setRGB(x, y, (metres + 10000) * 10);
      }
    }
    png(grey, "grey");
    Files.writeString(folder.resolve("grey.pgw"), "30\n0\n0\n-30\n500015\n5200285\n");
    job("grey", "file: grey.png; crs: EPSG:32632", "");
    png(terrarium, "terrarium");
    job("terrarium", "file: terrarium.png; encoding: terrarium", "");
    png(rgb, "rgb");
    job("rgb", "file: rgb.png; encoding: terrain-rgb", "");
  }

  private void tiff(String name) throws IOException {
    Files.copy(LAYOUTS.resolve(name + ".tif"), folder.resolve(name + ".tif"));
    // The sparse one lacks most of its blocks.
    job(name, "file: " + name + ".tif" + (name.endsWith("sparse") ? "; voids: fill" : ""), "");
  }

  private void png(BufferedImage image, String name) throws IOException {
    ImageIO.write(image, "png", folder.resolve(name + ".png").toFile());
  }

  private void maps() throws Exception {
    String square = "[[[20,20],[80,20],[80,80],[20,80],[20,20]],[[40,40],[50,40],[50,50],[40,40]]]";
    Files.writeString(
        folder.resolve("map.geojson"),
        "{\"type\":\"FeatureCollection\",\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"EPSG:32632\"}},\"features\":["
            + "{\"type\":\"Feature\",\"properties\":{\"kind\":\"wood\",\"lanes\":2,\"tags\":{\"a\":[1,null]}},"
            + "\"geometry\":{\"type\":\"Polygon\",\"coordinates\":"
            + square
            + "}},{\"type\":\"Feature\",\"properties\":{\"kind\":\"road\"},\"geometry\":{\"type\":\"GeometryCollection\","
            + "\"geometries\":[{\"type\":\"MultiLineString\",\"coordinates\":[[[0,0],[60,50,3],[110,60]]]}]}}]}");
    String zone = "zones: [{name: z, file: %s, ply: low%s}]\n";
    job(
        "geojson",
        "file: terrain.asc; crs: EPSG:32632",
        zone.formatted("map.geojson", ", width: 1"));
    Files.writeString(
        folder.resolve("outline.geojson"),
        "{\"type\":\"Polygon\",\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"EPSG:32632\"}},\"coordinates\":"
            + square
            + "}");
    job(
        "outline",
        "file: terrain.asc; crs: EPSG:32632; outline: {file: outline.geojson, outside: base}",
        "");
    geoPackage();
    job("gpkg", "file: terrain.asc; crs: EPSG:32632", zone.formatted("map.gpkg", ", width: 1"));
    String classes = AscText.of(12, 12, (column, row) -> column < 5 ? 41 : 30);
    Files.writeString(folder.resolve("classes.asc"), classes);
    Files.writeString(
        folder.resolve("classes.prj"), Files.readString(folder.resolve("placed.prj")));
    job(
        "classes",
        "file: terrain.asc; crs: EPSG:32632",
        zone.formatted("classes.asc", ", values: [41]"));
    job(
        "classes-tiff",
        "file: f32-feet.tif",
        zone.formatted("u8-lzw-p2.tif", ", values: [1, 20, 100]"));
  }

  /** Tables of OGC 12-128r18, annex C, with a point and a line in the blob layout of 2.1.3. */
  private void geoPackage() throws Exception {
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("map.gpkg"));
        Statement s = c.createStatement()) {
      s.execute(
          "CREATE TABLE gpkg_spatial_ref_sys (srs_name TEXT, srs_id INTEGER PRIMARY KEY,"
              + " organization TEXT, organization_coordsys_id INTEGER, definition TEXT, description"
              + " TEXT)");
      s.execute(
          "CREATE TABLE gpkg_contents (table_name TEXT PRIMARY KEY, data_type TEXT, identifier"
              + " TEXT, description TEXT, last_change TEXT, min_x DOUBLE, min_y DOUBLE, max_x"
              + " DOUBLE, max_y DOUBLE, srs_id INTEGER)");
      s.execute(
          "CREATE TABLE gpkg_geometry_columns (table_name TEXT, column_name TEXT,"
              + " geometry_type_name TEXT, srs_id INTEGER, z TINYINT, m TINYINT)");
      s.execute("CREATE TABLE roads (fid INTEGER PRIMARY KEY, geom BLOB, kind TEXT)");
      s.execute("INSERT INTO gpkg_spatial_ref_sys VALUES ('utm', 32632, 'EPSG', 32632, 'x', '')");
      s.execute(
          "INSERT INTO gpkg_contents VALUES ('roads', 'features', 'roads', '', '', 0, 0, 120, 120,"
              + " 32632)");
      s.execute(
          "INSERT INTO gpkg_geometry_columns VALUES ('roads', 'geom', 'LINESTRING', 32632, 0, 0)");
      try (PreparedStatement insert =
          c.prepareStatement("INSERT INTO roads (geom, kind) VALUES (?, 'road')")) {
        for (int i = 0; i < 3; i++) {
          ByteBuffer blob = ByteBuffer.allocate(8 + 9 + 32).order(ByteOrder.LITTLE_ENDIAN);
          blob.put((byte) 'G').put((byte) 'P').put((byte) 0).put((byte) 1).putInt(32632);
          blob.put((byte) 1).putInt(2).putInt(2);
          blob.putDouble(10).putDouble(20 + 30 * i).putDouble(100).putDouble(30 + 30 * i);
          insert.setBytes(1, blob.array());
          insert.execute();
        }
      }
    }
  }
}
