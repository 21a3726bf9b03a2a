package plyscape.zones.shapefile;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.text.NearestName;
import plyscape.zones.map.FeatureSink;
import plyscape.zones.map.MapFile;
import plyscape.zones.map.MapFormat;
import plyscape.zones.map.MapHead;
import plyscape.zones.map.MapQuery;
import plyscape.zones.map.ZippedMap;

/** Shapefile, plain or zipped. */
public final class ShapefileFormat implements MapFormat {

  private static final byte[] MAGIC = {0, 0, 0x27, 0x0a};

  private static final List<String> BESIDE = List.of(".shx", ".dbf", ".cpg", ".sbn", ".prj");

  @Override
  public boolean accepts(MapHead head) {
    return head.startsWith(MAGIC)
        || BESIDE.stream().anyMatch(head::endsWith)
        || ZippedMap.is(head) && !ZippedMap.names(head.file(), ".shp").isEmpty();
  }

  @Override
  public MapFile read(Path file, MapQuery query) {
    MapHead head = MapHead.of(file);
    try {
      if (ZippedMap.is(head)) {
        return zipped(file, query);
      }
      if (BESIDE.stream().anyMatch(head::endsWith)) {
        throw new InputFault(
            Place.file(file.toString()), "a part of a shapefile", "name the .shp file beside it");
      }
      FeatureSink sink = new FeatureSink(file.toString(), query);
      ShapeFiles files = ShapeFiles.beside(file);
      ShapeCrs crs = ShapeCrs.of(files);
      new ShapeReader(files, sink, "", "").read();
      return sink.toMap(crs.id(), crs.stated());
    } catch (IOException e) {
      throw InputFault.unreadable(file.toString(), e);
    }
  }

  private static MapFile zipped(Path file, MapQuery query) {
    FeatureSink sink = new FeatureSink(file.toString(), query);
    List<String> all = ZippedMap.names(file, ".shp").stream().sorted().toList();
    List<String> some =
        all.stream()
            .filter(name -> query.layer().isEmpty() || stem(name).equals(query.layer()))
            .toList();
    if (some.isEmpty()) {
      throw new InputFault(
          Place.file(file.toString()),
          "no layer \"" + query.layer() + "\"",
          NearestName.hint(query.layer(), all.stream().map(ShapefileFormat::stem).toList()));
    }
    try (ZippedMap zip = new ZippedMap(file)) {
      ShapeCrs crs = ShapeCrs.of(ShapeFiles.in(zip, file, some.get(0)));
      for (String name : some) {
        ShapeFiles files = ShapeFiles.in(zip, file, name);
        ShapeCrs own = ShapeCrs.of(files);
        new ShapeReader(
                files,
                sink,
                all.size() > 1 ? stem(name) : "",
                own.id().equals(crs.id()) ? "" : own.id())
            .read();
      }
      return sink.toMap(crs.id(), crs.stated());
    } catch (IOException e) {
      throw ZippedMap.fault(file, e);
    }
  }

  private static String stem(String name) {
    String last = name.substring(name.lastIndexOf('/') + 1);
    return last.substring(0, last.lastIndexOf('.'));
  }
}
