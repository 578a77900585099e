package dev.loopgauge.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;

/** Writes documents as JSON, and reads them back. The only class that needs the JSON library. */
public final class Json {
  private Json() {}

  /** The document as indented JSON, without a newline at its end. */
  public static String write(Document document) {
    JsonFactory plain =
        JsonFactory.builder().enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN).build();
    JSON json =
        JSON.builder(plain)
            .enable(JSON.Feature.PRETTY_PRINT_OUTPUT, JSON.Feature.WRITE_NULL_PROPERTIES)
            .build();
    try {
      return json.asString(document.json());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * A JSON document as ordered maps, lists, strings, booleans, numbers and nulls.
   *
   * @throws IOException when the text is no JSON object, or repeats a key
   */
  public static Map<String, Object> read(String text) throws IOException {
    return JSON.std.with(JSON.Feature.FAIL_ON_DUPLICATE_MAP_KEYS).mapFrom(text);
  }
}
