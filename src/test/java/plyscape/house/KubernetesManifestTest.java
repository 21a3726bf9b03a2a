package plyscape.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;

/**
 * The manifests of a series against the description of Kubernetes' own API, of which an excerpt is
 * in {@code release/kubernetes-job.json}: source and licence stand at its head.
 */
class KubernetesManifestTest {

  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final Path FOLDER = Path.of("src", "release");

  @ParameterizedTest
  @ValueSource(strings = {"series.yaml", "gather.yaml"})
  void manifests_areAsTheApiHasThem(String file) throws IOException {
    assertEquals(List.of(), faults(text(file)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      textBlock =
          """
          completions: 8           | completions: "8"        | spec.completions: a string
          backoffLimitPerIndex: 2  | backofLimitPerIndex: 2  | spec.backofLimitPerIndex: unknown
          - name: plan             | - title: plan           | spec.template.spec.containers.0.name: missing
          values: [1, 2, 3, 70]    | values: [1, 2.5]        | onExitCodes.values.1: a number
          drop: [ALL]              | drop: ALL               | securityContext.capabilities.drop: a string
          """)
  void slips_areFound(String right, String wrong, String fault) throws IOException {
    String text = text("series.yaml");
    assertTrue(text.contains(right), right);
    List<String> found = faults(text.replace(right, wrong));
    assertTrue(found.stream().anyMatch(one -> one.contains(fault)), found::toString);
  }

  @Test
  void sharesAreThoseOfTheIndexes_andNoFailedPanelIsTriedAgain() throws IOException {
    JsonNode spec = read(text("series.yaml")).get("spec");
    JsonNode container = spec.at("/template/spec/containers/0");
    assertEquals(spec.get("completions").asText(), container.at("/env/0/value").asText());
    JsonNode rule = spec.at("/podFailurePolicy/rules/1");
    assertEquals("FailIndex", rule.get("action").asText());
    assertEquals(container.get("name"), rule.at("/onExitCodes/containerName"));
    assertEquals(
        "[1,2,3,70]", rule.at("/onExitCodes/values").toString()); // src/contract.md, section 6
  }

  private static String text(String file) throws IOException {
    return Files.readString(FOLDER.resolve(file));
  }

  private static JsonNode read(String yaml) {
    return MAPPER.valueToTree(new Yaml(new SafeConstructor(new LoaderOptions())).load(yaml));
  }

  private static List<String> faults(String yaml) throws IOException {
    try (InputStream in =
        KubernetesManifestTest.class.getResourceAsStream("/plyscape/release/kubernetes-job.json")) {
      JsonNode root = MAPPER.readTree(in);
      List<String> faults = new ArrayList<>();
      check(root, root, read(yaml), "", faults);
      return faults;
    }
  }

  /** The words of JSON Schema that the excerpt uses. */
  private static void check(
      JsonNode root, JsonNode schema, JsonNode value, String place, List<String> faults) {
    if (schema.has("$ref")) {
      check(root, root.at(schema.get("$ref").asText().substring(1)), value, place, faults);
      return;
    }
    if (!fits(schema.get("type"), value)) {
      faults.add(
          place + ": a " + value.getNodeType().toString().toLowerCase(java.util.Locale.ROOT));
      return;
    }
    for (JsonNode key : schema.path("required")) {
      if (!value.has(key.asText())) {
        faults.add(join(place, key.asText()) + ": missing");
      }
    }
    for (int i = 0; value.isArray() && i < value.size(); i++) {
      check(root, schema.get("items"), value.get(i), join(place, String.valueOf(i)), faults);
    }
    value
        .properties()
        .forEach(
            entry -> {
              String at = join(place, entry.getKey());
              JsonNode under = schema.path("properties").path(entry.getKey());
              JsonNode others = schema.path("additionalProperties");
              if (!under.isMissingNode()) {
                check(root, under, entry.getValue(), at, faults);
              } else if (others.isObject()) {
                check(root, others, entry.getValue(), at, faults);
              } else {
                faults.add(at + ": unknown");
              }
            });
  }

  private static boolean fits(JsonNode types, JsonNode value) {
    List<String> words = new ArrayList<>();
    (types.isArray() ? types : List.of(types)).forEach(type -> words.add(type.asText()));
    return words.stream()
        .anyMatch(
            word ->
                switch (word) {
                  case "object" -> value.isObject();
                  case "array" -> value.isArray();
                  case "string" -> value.isTextual();
                  case "integer" -> value.isIntegralNumber();
                  case "number" -> value.isNumber();
                  case "boolean" -> value.isBoolean();
                  default -> throw new IllegalArgumentException(word);
                });
  }

  private static String join(String place, String key) {
    return place.isEmpty() ? key : place + "." + key;
  }
}
