package dev.loopgauge.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.io.UncheckedIOException;

/** Writes documents as JSON. The only class that needs the JSON library. */
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
}
