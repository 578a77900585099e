package dev.loopgauge.report.form;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The JSON Schema (draft 2020-12) of what {@link Binder} writes of a record: each component a key,
 * an Optional a value or null, and what a {@link Sparse} record may leave out not required.
 */
public final class DocumentSchema {
  private DocumentSchema() {}

  /**
   * The schema of a command's documents: one of some kinds, or an error.
   *
   * @param kinds the records that the command's documents are
   */
  public static Map<String, Object> of(String command, List<Class<? extends Record>> kinds) {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
    schema.put("title", "loopgauge " + command);
    schema.put(
        "anyOf",
        Stream.concat(kinds.stream(), Stream.of(ErrorDocument.class))
            .map(DocumentSchema::whole)
            .toList());
    return schema;
  }

  /** A document: with its version, and the entries of a journal that it lacks. */
  private static Map<String, Object> whole(Class<? extends Record> kind) {
    Map<String, Object> properties = new LinkedHashMap<>();
    properties.put("schema", Map.of("const", Whole.SCHEMA));
    List<String> required = new ArrayList<>(List.of("schema"));
    add(kind, properties, required);
    properties.putIfAbsent("damaged", array(Map.of("type", "string")));
    return object(properties, required);
  }

  private static Map<String, Object> record(Class<?> kind) {
    Map<String, Object> properties = new LinkedHashMap<>();
    List<String> required = new ArrayList<>();
    if (Whole.class.isAssignableFrom(kind)) {
      properties.put("schema", Map.of("const", Whole.SCHEMA));
      required.add("schema");
    }
    add(kind, properties, required);
    return object(properties, required);
  }

  private static void add(Class<?> kind, Map<String, Object> properties, List<String> required) {
    boolean sparse = Sparse.class.isAssignableFrom(kind);
    for (Shape.Part part : Shape.of(kind).parts()) {
      if (part.inlined()) {
        add((Class<?>) part.type(), properties, required);
        continue;
      }
      properties.put(part.key(), value(part.type()));
      if (!(sparse && mayBeEmpty(part.type()))) {
        required.add(part.key());
      }
    }
  }

  private static boolean mayBeEmpty(Type type) {
    return type instanceof ParameterizedType generic
        && (generic.getRawType() == Optional.class || generic.getRawType() == List.class);
  }

  private static Map<String, Object> object(Map<String, Object> properties, List<String> required) {
    Map<String, Object> object = new LinkedHashMap<>();
    object.put("type", "object");
    object.put("properties", properties);
    object.put("required", required);
    object.put("additionalProperties", false);
    return object;
  }

  private static Map<String, Object> array(Object items) {
    Map<String, Object> array = new LinkedHashMap<>();
    array.put("type", "array");
    array.put("items", items);
    return array;
  }

  private static Map<String, Object> value(Type type) {
    if (type instanceof ParameterizedType generic) {
      Type of = generic.getActualTypeArguments()[0];
      if (generic.getRawType() == Optional.class) {
        return Map.of("anyOf", List.of(value(of), Map.of("type", "null")));
      }
      return generic.getRawType() == List.class ? array(value(of)) : Map.of("type", "object");
    }
    Class<?> kind = (Class<?>) type;
    if (kind.isRecord()) {
      return record(kind);
    }
    if (kind.isEnum()) {
      return Map.of(
          "enum",
          Arrays.stream(kind.getEnumConstants()).map(c -> Binder.label((Enum<?>) c)).toList());
    }
    return Map.of("type", name(kind));
  }

  private static String name(Class<?> kind) {
    if (kind == String.class || kind == Path.class) {
      return "string";
    }
    if (kind == boolean.class || kind == Boolean.class) {
      return "boolean";
    }
    if (kind == int.class || kind == Integer.class) {
      return "integer";
    }
    if (kind == BigDecimal.class) {
      return "number";
    }
    throw new IllegalArgumentException("documents have no " + kind);
  }
}
