package plyscape.report.json;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.grid.CellFrame;
import plyscape.grid.Grid;

/** Reads {@code faces.json} and its relief back, strictly. */
public final class FacesReader {

  /** A relief larger than any plan's is not ours. */
  private static final long MOST_CELLS = 100_000_000;

  private final String file;

  private FacesReader(String file) {
    this.file = file;
  }

  /**
   * The figures in a file's text.
   *
   * @param file its name, for messages
   * @param relief the bytes of the picture beside it
   * @throws InputFault if one of them isn't as {@link FacesJson} writes it
   */
  public static FaceFigures read(String file, String text, byte[] relief) {
    JsonNode root;
    try {
      root = new ObjectMapper().readTree(text);
    } catch (JsonProcessingException e) {
      throw new InputFault(
          Place.file(file), "not JSON: " + e.getOriginalMessage(), "write the plan again", e);
    }
    return new FacesReader(file).figures(root, relief);
  }

  private FaceFigures figures(JsonNode root, byte[] relief) {
    if (!root.path("schema").asText("").equals(FacesJson.SCHEMA)) {
      throw fault("schema", "isn't \"" + FacesJson.SCHEMA + "\"");
    }
    List<FaceFigures.FaceFigure> faces = new ArrayList<>();
    for (JsonNode face : root.path("faces")) {
      String at = "faces[" + faces.size() + "].";
      FaceFigures.FaceFigure figure =
          new FaceFigures.FaceFigure(
              (int) number(face, at, "ply"),
              (int) number(face, at, "rings"),
              number(face, at, "high_m"),
              number(face, at, "low_m"),
              number(face, at, "upper_mm"),
              number(face, at, "lower_mm"));
      if (figure.rings() < 1
          || !(figure.highM() >= figure.lowM())
          || !(figure.upperMm() >= 0 && figure.lowerMm() >= figure.upperMm())) {
        throw fault(at + "upper_mm", "isn't a face");
      }
      faces.add(figure);
    }
    double cusp = number(root, "", "cusp_mm");
    if (!(cusp >= 0 && cusp <= 1)) {
      throw fault("cusp_mm", "isn't a cusp");
    }
    return new FaceFigures(cusp, grid(root.path("relief"), relief), List.copyOf(faces));
  }

  private Grid grid(JsonNode node, byte[] picture) {
    double columns = number(node, "relief.", "columns");
    double rows = number(node, "relief.", "rows");
    double cellX = number(node, "relief.", "cell_x_mm");
    double cellY = number(node, "relief.", "cell_y_mm");
    if (!(columns >= 1 && rows >= 1 && columns * rows <= MOST_CELLS && cellX > 0 && cellY > 0)) {
      throw fault("relief", "isn't a grid");
    }
    CellFrame frame =
        new CellFrame(
            number(node, "relief.", "min_x_mm"),
            number(node, "relief.", "min_y_mm"),
            cellX,
            cellY,
            (int) columns,
            (int) rows);
    BufferedImage image = image(picture, frame);
    double base = number(node, "relief.", "base_m");
    double step = number(node, "relief.", "step_m");
    double[] values = new double[frame.size()];
    for (int row = 0; row < frame.rows(); row++) {
      for (int column = 0; column < frame.columns(); column++) {
        int sample = image.getRaster().getSample(column, frame.rows() - 1 - row, 0);
        values[row * frame.columns() + column] = base + step * sample;
      }
    }
    return new Grid(frame, values);
  }

  private BufferedImage image(byte[] picture, CellFrame frame) {
    ImageReader reader = ImageIO.getImageReadersByFormatName("png").next();
    try (ImageInputStream in = new MemoryCacheImageInputStream(new ByteArrayInputStream(picture))) {
      reader.setInput(in);
      if (reader.getWidth(0) != frame.columns() || reader.getHeight(0) != frame.rows()) {
        throw fault("relief.file", "has another size than columns and rows say");
      }
      return reader.read(0);
    } catch (IOException | IndexOutOfBoundsException | IllegalArgumentException e) {
      throw new InputFault(
          new Place(file, 0, 0, "relief.file"),
          "can't be read: " + e.getMessage(),
          "write the plan again",
          e);
    } finally {
      reader.dispose();
    }
  }

  private double number(JsonNode parent, String path, String key) {
    JsonNode node = parent.path(key);
    if (!node.isNumber() || !Double.isFinite(node.doubleValue())) {
      throw fault(path + key, "isn't a number");
    }
    return node.doubleValue();
  }

  private InputFault fault(String key, String found) {
    return new InputFault(new Place(file, 0, 0, key), found, "write the plan again");
  }
}
