package plyscape.report.json;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Map;

/**
 * Writes a tree as JSON text. Doubles get the fewest digits that give the same double back, by one
 * algorithm on every JDK (that of {@code Double.toString} changed with JDK 19). Walks the tree
 * itself: a mapper would first set up its serializers, which takes longer than all the rest.
 */
public final class JsonTree {

  private static final JsonFactory FACTORY =
      JsonFactory.builder().enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER).build();

  private JsonTree() {}

  /** The text; {@code indented} with two blanks a level and LF, else on one line. */
  public static String text(JsonNode node, boolean indented) {
    StringWriter out = new StringWriter();
    try (JsonGenerator generator = FACTORY.createGenerator(out)) {
      if (indented) {
        DefaultIndenter lines = new DefaultIndenter("  ", "\n");
        generator.setPrettyPrinter(
            new DefaultPrettyPrinter().withObjectIndenter(lines).withArrayIndenter(lines));
      }
      write(generator, node);
    } catch (IOException e) {
      throw new UncheckedIOException(e); // a string never fails
    }
    return out.toString();
  }

  private static void write(JsonGenerator generator, JsonNode node) throws IOException {
    switch (node.getNodeType()) {
      case OBJECT -> {
        generator.writeStartObject();
        for (Map.Entry<String, JsonNode> field : node.properties()) {
          generator.writeFieldName(field.getKey());
          write(generator, field.getValue());
        }
        generator.writeEndObject();
      }
      case ARRAY -> {
        generator.writeStartArray();
        for (JsonNode element : node) {
          write(generator, element);
        }
        generator.writeEndArray();
      }
      case NUMBER -> number(generator, node);
      case STRING -> generator.writeString(node.textValue());
      case BOOLEAN -> generator.writeBoolean(node.booleanValue());
      case NULL -> generator.writeNull();
      default ->
          throw new IllegalArgumentException("no JSON for a node of type " + node.getNodeType());
    }
  }

  /** JSON has no word for a number that isn't finite: none of ours may be. */
  private static void number(JsonGenerator generator, JsonNode node) throws IOException {
    if (node.isIntegralNumber()) {
      generator.writeNumber(node.longValue());
    } else if (Double.isFinite(node.doubleValue())) {
      generator.writeNumber(node.doubleValue());
    } else {
      throw new IllegalArgumentException("a number that isn't finite: " + node.doubleValue());
    }
  }
}
