package dev.loopgauge.cli;

import dev.loopgauge.cli.command.DocumentKinds;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Checks documents against the part of JSON Schema (draft 2020-12) that this program prints. */
final class SchemaCheck {
  private static final Set<String> KNOWN =
      Set.of(
          "$schema",
          "title",
          "anyOf",
          "type",
          "properties",
          "required",
          "additionalProperties",
          "items",
          "enum",
          "const");

  private SchemaCheck() {}

  /** What is wrong with a document by its command's schema; empty where nothing is. */
  static List<String> wrong(Map<?, ?> document) {
    if (Set.of("help", "version").contains(document.get("outcome"))) {
      return List.of();
    }
    String command = String.valueOf(document.get("command"));
    return DocumentKinds.schema(command)
        .map(schema -> wrong("", schema, document))
        .orElseGet(
            () ->
                "error".equals(document.get("outcome"))
                    ? List.of()
                    : List.of("no schema of " + command));
  }

  static List<String> wrong(String at, Map<?, ?> schema, Object value) {
    if (!KNOWN.containsAll(schema.keySet())) {
      return List.of(at + " has a schema that is not understood: " + schema.keySet());
    }
    if (schema.get("anyOf") instanceof List<?> any) {
      return any(at, any, value);
    }
    if (schema.containsKey("const")) {
      return schema.get("const").equals(value) ? List.of() : List.of(at + " is " + value);
    }
    if (schema.get("enum") instanceof List<?> labels) {
      return labels.contains(value) ? List.of() : List.of(at + " is " + value);
    }
    List<String> wrong = new ArrayList<>();
    if (!isOf((String) schema.get("type"), value)) {
      wrong.add(at + " is no " + schema.get("type") + ": " + value);
    } else if (value instanceof Map<?, ?> map && schema.get("properties") instanceof Map<?, ?> p) {
      object(at, schema, p, map, wrong);
    } else if (value instanceof List<?> list) {
      list.forEach(item -> wrong.addAll(wrong(at + "[]", (Map<?, ?>) schema.get("items"), item)));
    }
    return wrong;
  }

  /** The fewest complaints are the most telling. */
  private static List<String> any(String at, List<?> any, Object value) {
    List<String> least = null;
    for (Object schema : any) {
      List<String> wrong = wrong(at, (Map<?, ?>) schema, value);
      least = least == null || wrong.size() < least.size() ? wrong : least;
    }
    return least;
  }

  private static void object(
      String at, Map<?, ?> schema, Map<?, ?> properties, Map<?, ?> map, List<String> wrong) {
    for (Object key : (List<?>) schema.get("required")) {
      if (!map.containsKey(key)) {
        wrong.add(at + "." + key + " is missing");
      }
    }
    Set<Object> more = new HashSet<>(map.keySet());
    more.removeAll(properties.keySet());
    more.forEach(key -> wrong.add(at + "." + key + " has no place in the schema"));
    map.forEach(
        (key, value) -> {
          if (properties.get(key) instanceof Map<?, ?> of) {
            wrong.addAll(wrong(at + "." + key, of, value));
          }
        });
  }

  private static boolean isOf(String type, Object value) {
    return switch (type) {
      case "object" -> value instanceof Map;
      case "array" -> value instanceof List;
      case "string" -> value instanceof String;
      case "boolean" -> value instanceof Boolean;
      case "integer" -> value instanceof Integer;
      case "number" -> value instanceof Number;
      case "null" -> value == null;
      default -> throw new IllegalArgumentException(type);
    };
  }
}
