package plyscape.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import plyscape.files.PlanFiles;
import plyscape.grid.CellFrame;
import plyscape.region.Face;
import plyscape.region.FaceField;

/**
 * {@code faces/faces.json}: how deep every place of a sculpted panel is to be cut. The faces come
 * in the order of the polygons in each layer's path {@code exposed}, ply after ply; {@code rings}
 * says how many of that path's outlines belong to one. Depths go evenly from {@code upper_mm} at
 * the elevation {@code high_m} to {@code lower_mm} at {@code low_m}, and stay beyond; the elevation
 * is bilinear between the cells of the relief.
 */
public final class FacesJson {

  /** Value of the key {@code schema}. */
  public static final String SCHEMA = "plyscape-faces-1";

  private FacesJson() {}

  /** The file's text, LF at the end. */
  public static String text(FaceField field) {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("schema", SCHEMA).put("cusp_mm", field.cuspMm());
    CellFrame frame = field.relief().frame();
    root.putObject("relief")
        .put("file", PlanFiles.RELIEF)
        .put("min_x_mm", frame.minX())
        .put("min_y_mm", frame.minY())
        .put("cell_x_mm", frame.cellX())
        .put("cell_y_mm", frame.cellY())
        .put("columns", frame.columns())
        .put("rows", frame.rows())
        .put("base_m", field.baseM())
        .put("step_m", field.stepM());
    ArrayNode faces = root.putArray("faces");
    for (int i = 0; i < field.faces().size(); i++) {
      Face face = field.faces().get(i);
      faces
          .addObject()
          .put("ply", face.plyNumber())
          .put("rings", 1 + field.polygons().get(i).getNumInteriorRing())
          .put("high_m", face.highM())
          .put("low_m", face.lowM())
          .put("upper_mm", face.upperMm())
          .put("lower_mm", face.lowerMm());
    }
    return JsonTree.text(root, true) + "\n";
  }
}
