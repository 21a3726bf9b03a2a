package plyscape.zones;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import plyscape.fault.InputFault;
import plyscape.fault.Mutant;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.GroundFrame;
import plyscape.zones.map.MapFeature;
import plyscape.zones.map.MapFile;
import plyscape.zones.map.MapQuery;
import plyscape.zones.map.MapShapes;

/** One valley in every format, against what another program finds in the same files. */
class MapFormatsTest {

  private static final Path FOLDER = Path.of("src/test/resources/plyscape/zones/formats");

  /** 100 m a millimetre. */
  private static final GroundFrame FRAME =
      new GroundFrame(
          "EPSG:32630", new Box(510000, 6145000, 530000, 6165000), new Box(0, 0, 200, 200), 1);

  @TempDir Path dir;

  private static MapFile read(Path file) {
    return MapOpener.read(file, MapQuery.everything());
  }

  /** GDAL 3.6.2; scripts/check-maps.sh made the figures and compares them anew. */
  @ParameterizedTest
  @CsvFileSource(resources = "/plyscape/zones/formats/formats.csv")
  void features_areWhereAnotherProgramHasThem(
      String file,
      String layer,
      String property,
      String value,
      int count,
      double areaM2,
      double lengthM,
      double x,
      double y) {
    MapFile map = read(FOLDER.resolve(file));
    List<MapFeature> found =
        map.features().stream()
            .filter(f -> value.equals(f.properties().get(property)) && f.trouble().isEmpty())
            .toList();
    assertEquals(count, found.size());
    double area = 0;
    double length = 0;
    double sumX = 0;
    double sumY = 0;
    for (MapFeature feature : found) {
      FeatureShape shape =
          new FeatureShape(GroundMap.of(map.in(feature.crs()), FRAME, new Warnings()), 0.01);
      shape.add(feature.geometry());
      Geometry all =
          shape.areas().isEmpty()
              ? MapShapes.lines(shape.lines())
              : MapShapes.collection(shape.areas());
      area += all.getArea();
      length += shape.areas().isEmpty() ? all.getLength() : 0;
      Coordinate centre = all.getCentroid().getCoordinate();
      sumX += centre.x;
      sumY += centre.y;
    }
    assertEquals(areaM2 / 1e4, area, 2e-5 * area);
    assertEquals(lengthM / 100, length, 1e-5 * length);
    assertEquals((x - 510000) / 100, sumX / count, 0.01);
    assertEquals((y - 6145000) / 100, sumY / count, 0.01);
  }

  @Test
  void lettersOfBothEncodings_areRead() {
    assertTrue(
        names("areas.shp").contains("Kleiner Weiher am Bühl"), names("areas.shp").toString());
    assertTrue(names("valley.kml").contains("Kleiner Weiher am Bühl"));
    assertTrue(names("valley.zip").containsAll(List.of("Kleiner Weiher am Bühl", "Obere Gasse")));
  }

  private static List<Object> names(String file) {
    return read(FOLDER.resolve(file)).features().stream()
        .map(f -> f.properties().getOrDefault("name", ""))
        .toList();
  }

  @Test
  void layer_picksFolderFileOrKind() {
    assertEquals(2, layer("valley.zip", "lanes"));
    assertEquals(16, layer("valley.kml", "valley"));
    assertEquals(2, layer("walk.gpx", "tracks"));
    assertEquals(0, layer("walk.gpx", "routes"));
    for (String file : List.of("valley.zip", "valley.kml", "walk.gpx")) {
      InputFault fault = assertThrows(InputFault.class, () -> layer(file, "lane"));
      assertTrue(fault.getMessage().contains("\"lane\""), fault.getMessage());
    }
  }

  private static int layer(String file, String layer) {
    MapQuery query = new MapQuery(layer, Set.of(), properties -> true, crs -> null);
    return MapOpener.read(FOLDER.resolve(file), query).features().size();
  }

  /** Cut off anywhere: the file is named, or what it means without its end is read. */
  @ParameterizedTest
  @ValueSource(strings = {"areas.shp", "valley.zip", "valley.kml", "walk.gpx", "valley.osm"})
  void cutFiles_areFaults(String name) throws IOException {
    byte[] whole = Files.readAllBytes(FOLDER.resolve(name));
    Path file = dir.resolve(name);
    for (int length : new int[] {whole.length / 3, whole.length / 2, whole.length - 10}) {
      Files.write(file, Arrays.copyOf(whole, length));
      InputFault fault = assertThrows(InputFault.class, () -> read(file));
      assertTrue(fault.getMessage().contains(name), fault.getMessage());
    }
    Files.write(file, new byte[0]);
    assertThrows(InputFault.class, () -> read(file));
    Files.writeString(file, "of another kind than its name says");
    assertThrows(InputFault.class, () -> read(file));
  }

  /** Spoiled files are read or refused, with the file named, and nothing else. */
  @ParameterizedTest
  @ValueSource(strings = {"areas.shp", "valley.zip", "valley.kml", "walk.gpx", "valley.osm"})
  void spoiledFiles_areReadOrRefused(String name) throws IOException {
    byte[] whole = Files.readAllBytes(FOLDER.resolve(name));
    Files.copy(FOLDER.resolve("areas.dbf"), dir.resolve("areas.dbf"));
    Path file = dir.resolve(name);
    for (int seed = 1; seed <= 150; seed++) {
      Files.write(file, Mutant.of(whole, seed));
      try {
        read(file);
      } catch (InputFault fault) {
        assertTrue(fault.getMessage().contains(name), fault.getMessage());
      } catch (RuntimeException | StackOverflowError e) {
        throw new AssertionError(name + ", seed " + seed, e);
      }
    }
  }

  @Test
  void spoiledTables_areReadOrRefused() throws IOException {
    byte[] whole = Files.readAllBytes(FOLDER.resolve("areas.dbf"));
    Path file = dir.resolve("areas.shp");
    Files.copy(FOLDER.resolve("areas.shp"), file);
    for (int seed = 1; seed <= 150; seed++) {
      Files.write(dir.resolve("areas.dbf"), Mutant.of(whole, seed));
      try {
        // A row may have become one that is marked as deleted.
        int features = read(file).features().size();
        assertTrue(features >= 13 && features <= 14, "seed " + seed + ": " + features);
      } catch (InputFault fault) {
        assertTrue(fault.getMessage().contains("areas."), fault.getMessage());
      } catch (RuntimeException e) {
        throw new AssertionError("seed " + seed, e);
      }
    }
  }

  @Test
  void partsOfAShapefile_areToldToNameTheShp() {
    for (String ending : List.of("dbf", "prj", "cpg", "shx")) {
      InputFault fault =
          assertThrows(InputFault.class, () -> read(FOLDER.resolve("areas." + ending)));
      assertTrue(fault.getMessage().contains("name the .shp file"), fault.getMessage());
    }
  }

  @Test
  void xmlThatWantsMoreFromOutside_getsNothing() throws IOException {
    Path secret = dir.resolve("secret.txt");
    Files.writeString(secret, "secret");
    Path file = dir.resolve("outside.kml");
    Files.writeString(
        file,
        "<?xml version='1.0'?><!DOCTYPE kml [<!ENTITY x SYSTEM '"
            + secret.toUri()
            + "'>]><kml><Placemark><name>&x;</name></Placemark></kml>");
    try {
      assertTrue(
          read(file).features().stream()
              .noneMatch(f -> f.properties().toString().contains("secret")));
    } catch (InputFault fault) {
      assertTrue(fault.getMessage().contains("outside.kml"), fault.getMessage());
    }
  }
}
