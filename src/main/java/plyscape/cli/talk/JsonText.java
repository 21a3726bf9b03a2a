package plyscape.cli.talk;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** JSON for stdout: two blanks a level, LF on every system, ended by LF. */
public final class JsonText {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private JsonText() {}

  /** A new object with its schema's name in front. */
  public static ObjectNode object(String schema) {
    return MAPPER.createObjectNode().put("schema", schema);
  }

  public static String of(JsonNode node) {
    DefaultIndenter lines = new DefaultIndenter("  ", "\n");
    DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
    printer.indentObjectsWith(lines);
    printer.indentArraysWith(lines);
    try {
      return MAPPER.writer(printer).writeValueAsString(node) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a tree of plain values can't be written", e);
    }
  }
}
