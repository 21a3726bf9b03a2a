package plyscape.job.yaml;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.composer.Composer;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import org.yaml.snakeyaml.nodes.Tag;
import org.yaml.snakeyaml.parser.ParserImpl;
import org.yaml.snakeyaml.reader.StreamReader;
import org.yaml.snakeyaml.resolver.Resolver;
import plyscape.fault.InputFault;
import plyscape.fault.Limit;
import plyscape.fault.Place;
import plyscape.files.InputFile;

/**
 * YAML text to a tree of {@link YamlNode} with places. Bounded: size, nesting and the nodes that
 * aliases expand to have limits, so that a small hostile file can't take memory or time. No types
 * are made from tags.
 */
public final class YamlText {

  private final String file;
  private final Place fixed;
  private final Path folder;
  private int nodes;

  private YamlText(String file, Place fixed, Path folder) {
    this.file = file;
    this.fixed = fixed;
    this.folder = folder;
  }

  /**
   * Reads a file.
   *
   * @throws InputFault if it can't be read, isn't UTF-8 or isn't YAML
   */
  public static YamlNode read(Path path) {
    return read(path, bytes(path));
  }

  /** The same for a file's bytes that are at hand. */
  public static YamlNode read(Path path, byte[] bytes) {
    String file = path.toString();
    return new YamlText(file, null, path.getParent()).parse(decode(bytes, file));
  }

  /**
   * Reads a text that stands, or would stand, in a file.
   *
   * @throws InputFault if it isn't YAML
   */
  public static YamlNode of(Path path, String text) {
    return new YamlText(path.toString(), null, path.getParent()).parse(text);
  }

  /**
   * Reads a value that doesn't stand in a settings file.
   *
   * @param place where it stands, for all that is in it
   * @param folder that paths in it are relative to; null for the current directory
   * @throws InputFault if it isn't YAML
   */
  public static YamlNode value(String text, Place place, Path folder) {
    return new YamlText("", place, folder).parse(text);
  }

  private YamlNode parse(String text) {
    LoaderOptions options = new LoaderOptions();
    options.setNestingDepthLimit((int) Limit.SETTINGS_LEVELS.value());
    options.setCodePointLimit((int) Limit.SETTINGS_BYTES.value());
    options.setMaxAliasesForCollections(
        (int) Limit.SETTINGS_VALUES.value()); // our own count below gives the place
    try {
      ParserImpl parser = new ParserImpl(new StreamReader(text), options);
      Node root = new Composer(parser, new Resolver(), options).getSingleNode();
      return root == null
          ? new YamlNode(YamlNode.Kind.NOTHING, at(null, ""), folder, "")
          : convert(root, "", 0);
    } catch (MarkedYAMLException e) {
      String context = e.getContext() == null ? "" : " " + e.getContext();
      throw new InputFault(
          at(e.getProblemMark(), ""),
          "not valid YAML: " + e.getProblem() + context,
          hash(text, e.getProblemMark())
              ? "put quotes around what begins with #, such as colour: \"#8fbf5a\": else it is a"
                  + " comment"
              : "check indentation (blanks, no tabs), quotes and brackets here",
          e);
    } catch (YAMLException e) {
      if (firstLine(e.getMessage()).startsWith("Nesting Depth")) {
        throw tooMuch(null, Limit.SETTINGS_LEVELS, "levels");
      }
      throw new InputFault(at(null, ""), "not valid YAML: " + firstLine(e.getMessage()), "", e);
    }
  }

  /** Whether a colour without quotes, in the line or the one before, made a comment of the rest. */
  private static boolean hash(String text, Mark mark) {
    return mark != null
        && text.lines()
            .skip(Math.max(0, mark.getLine() - 1))
            .limit(2)
            .anyMatch(line -> line.matches(".*:\\s+#[0-9a-fA-F]{3,6}\\b.*"));
  }

  private static String firstLine(String message) {
    return message == null ? "" : message.lines().findFirst().orElse("");
  }

  private YamlNode convert(Node node, String key, int depth) {
    Place place = at(node.getStartMark(), key);
    if (++nodes > Limit.SETTINGS_VALUES.value()) {
      throw tooMuch(node.getStartMark(), Limit.SETTINGS_VALUES, "values");
    }
    if (depth > Limit.SETTINGS_LEVELS.value()) {
      throw tooMuch(node.getStartMark(), Limit.SETTINGS_LEVELS, "levels");
    }
    if (node instanceof MappingNode mapping) {
      YamlNode out = new YamlNode(YamlNode.Kind.MAPPING, place, folder, "");
      for (NodeTuple tuple : mapping.getValue()) {
        addEntry(out, tuple, key, depth);
      }
      return out;
    }
    if (node instanceof SequenceNode list) {
      YamlNode out = new YamlNode(YamlNode.Kind.LIST, place, folder, "");
      for (Node item : list.getValue()) {
        out.items()
            .add(convert(item, join(key, String.valueOf(out.items().size() + 1)), depth + 1));
      }
      return out;
    }
    ScalarNode scalar = (ScalarNode) node;
    boolean nothing = scalar.getTag().equals(Tag.NULL) && scalar.isPlain();
    YamlNode.Kind kind =
        nothing
            ? YamlNode.Kind.NOTHING
            : scalar.isPlain() ? YamlNode.Kind.PLAIN : YamlNode.Kind.QUOTED;
    return new YamlNode(kind, place, folder, nothing ? "" : scalar.getValue());
  }

  private InputFault tooMuch(Mark mark, Limit limit, String what) {
    return new InputFault(
        at(mark, ""),
        "more than " + limit.value() + " " + what,
        "a settings file needs far less; aliases (*) may have multiplied it; " + limit.help());
  }

  private void addEntry(YamlNode out, NodeTuple tuple, String parent, int depth) {
    Place keyPlace = at(tuple.getKeyNode().getStartMark(), parent);
    if (!(tuple.getKeyNode() instanceof ScalarNode scalar)) {
      throw new InputFault(keyPlace, "a key that is a list or mapping", "keys are single words");
    }
    String name = scalar.getValue();
    if (out.entries().containsKey(name)) {
      Place first = out.keyPlace(name);
      throw new InputFault(
          keyPlace,
          "the key \""
              + name
              + "\" a second time"
              + (first.line() > 0 ? ", first in line " + first.line() : ""),
          "keep one of them");
    }
    out.put(name, keyPlace, convert(tuple.getValueNode(), join(parent, name), depth + 1));
  }

  static String join(String parent, String key) {
    return parent.isEmpty() ? key : parent + "." + key;
  }

  private Place at(Mark mark, String key) {
    if (fixed != null) {
      return fixed;
    }
    return mark == null
        ? new Place(file, 0, 0, key)
        : new Place(file, mark.getLine() + 1, mark.getColumn() + 1, key);
  }

  private static byte[] bytes(Path path) {
    return InputFile.bytes(
        path,
        Limit.SETTINGS_BYTES.value(),
        "give a YAML file",
        "is this a settings file? it should be text of a few kB; " + Limit.SETTINGS_BYTES.help());
  }

  private static String decode(byte[] bytes, String file) {
    if (bytes.length >= 2
        && ((bytes[0] == -1 && bytes[1] == -2) || (bytes[0] == -2 && bytes[1] == -1))) {
      throw new InputFault(Place.file(file), "text in UTF-16", "save it as UTF-8");
    }
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CharBuffer out = CharBuffer.allocate(bytes.length + 1);
    CoderResult result =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT)
            .decode(in, out, true);
    out.flip();
    if (result.isError()) {
      throw notUtf8(out.toString(), bytes[in.position()], file);
    }
    String text = out.toString();
    return text.startsWith("\ufeff") ? text.substring(1) : text;
  }

  private static InputFault notUtf8(String before, byte found, String file) {
    int line = 1 + (int) before.chars().filter(c -> c == '\n').count();
    int column = before.length() - before.lastIndexOf('\n');
    return new InputFault(
        Place.at(file, line, column),
        String.format(java.util.Locale.ROOT, "a byte 0x%02x that isn't UTF-8", found),
        "save the file as UTF-8",
        new CharacterCodingException());
  }

  /** The root as a mapping. */
  public static YamlNode mappingOf(YamlNode root, String example) {
    if (root.kind() != YamlNode.Kind.MAPPING) {
      String found =
          Optional.of(root)
              .filter(YamlNode::isScalar)
              .map(YamlNode::found)
              .orElse(root.kind().words);
      throw new InputFault(
          root.place(), "the file holds " + found, "wanted keys with values, such as " + example);
    }
    return root;
  }
}
