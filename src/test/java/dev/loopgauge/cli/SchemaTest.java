package dev.loopgauge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.jr.ob.JSON;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaId;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SpecVersion.VersionFlag;
import dev.loopgauge.cli.command.DocumentKinds;
import dev.loopgauge.cli.terminal.ExitCode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Each document that {@link Run#json} reads in any test is checked by the same schemas. */
class SchemaTest {
  private static final JsonSchema SPECIFICATION =
      JsonSchemaFactory.getInstance(VersionFlag.V202012)
          .getSchema(SchemaLocation.of(SchemaId.V202012));

  static List<String> commands() {
    return Commands.names().stream()
        .filter(command -> !List.of("journal", "profile").contains(command))
        .toList();
  }

  @ParameterizedTest
  @MethodSource("commands")
  void everyCommandPrintsTheSchemaOfItsDocumentsWithoutItsArguments(String command)
      throws Exception {
    Run run = Run.of(command, "--json-schema");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertEquals("", run.err());
    Map<String, Object> schema = JSON.std.mapFrom(run.out());
    assertEquals("https://json-schema.org/draft/2020-12/schema", schema.get("$schema"));
    assertEquals("loopgauge " + command, schema.get("title"));
    assertEquals(Set.of(), SPECIFICATION.validate(run.out(), InputFormat.JSON));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "list", "show", "compare", "history", "export", "import", "check", "add", "relabel"
      })
  void soDoTheCommandsOfTheJournal(String command) {
    Run run = Run.of("journal", command, "--json-schema");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertTrue(run.out().contains("\"title\":\"loopgauge journal " + command), run.out());
  }

  @Test
  void aGroupOfCommandsHasNoDocumentOfItsOwn() {
    Run.of("journal", "--json-schema").assertRefused("prints no document of its own");
  }

  /** The check can fail: for a missing key, a strange one and a value of another type. */
  @ParameterizedTest
  @ValueSource(strings = {"missing", "strange", "text", "outcome"})
  void aDocumentThatBreaksItsSchemaIsFound(String how) throws Exception {
    Map<String, Object> document = new LinkedHashMap<>();
    document.put("schema", 1);
    document.put("command", "journal import");
    document.put("outcome", "imported");
    document.put("read", 2);
    document.put("new", 1);
    document.put("notes", List.of());
    assertEquals(List.of(), SchemaCheck.wrong(JSON.std.asString(document)));
    switch (how) {
      case "missing" -> document.remove("read");
      case "strange" -> document.put("more", 1);
      case "text" -> document.put("read", "2");
      default -> document.put("outcome", 3);
    }
    assertFalse(SchemaCheck.wrong(JSON.std.asString(document)).isEmpty());
    assertTrue(DocumentKinds.schema("nothing").isEmpty());
  }
}
