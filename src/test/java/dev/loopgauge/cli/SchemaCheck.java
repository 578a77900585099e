package dev.loopgauge.cli;

import com.fasterxml.jackson.jr.ob.JSON;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import com.networknt.schema.ValidationMessage;
import dev.loopgauge.cli.command.DocumentKinds;
import dev.loopgauge.report.form.DocumentSchema;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Checks documents by the JSON Schema that this program prints for their commands. */
public final class SchemaCheck {
  private static final JsonSchemaFactory FACTORY =
      JsonSchemaFactory.getInstance(VersionFlag.V202012);

  private static final Map<String, JsonSchema> SCHEMAS = new ConcurrentHashMap<>();

  private record Text(String command, String outcome, String text) {}

  private SchemaCheck() {}

  /**
   * What is wrong with a document by its command's schema; empty where nothing is.
   *
   * @param document as it was printed
   * @throws IOException when it is no JSON
   */
  public static List<String> wrong(String document) throws IOException {
    String command = String.valueOf(JSON.std.mapFrom(document).get("command"));
    return SCHEMAS
        .computeIfAbsent(command, SchemaCheck::schema)
        .validate(document, InputFormat.JSON)
        .stream()
        .map(ValidationMessage::getMessage)
        .toList();
  }

  /** Without a command, or with the name of several, nothing is printed but errors and help. */
  private static JsonSchema schema(String command) {
    return FACTORY.getSchema(
        text(
            DocumentKinds.schema(command)
                .orElseGet(() -> DocumentSchema.of(command, List.of(Text.class)))));
  }

  private static String text(Map<String, Object> schema) {
    try {
      return JSON.std.asString(schema);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
