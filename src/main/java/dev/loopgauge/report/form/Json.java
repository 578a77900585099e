package dev.loopgauge.report.form;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Writes documents as JSON, and reads them back. Only this class and {@link JsonList}, which reads
 * long lists item by item, use the JSON library.
 */
public final class Json {
  /** Halves of surrogate pairs can stand in a string, but not in UTF-8. */
  private static final Pattern HALF_A_PAIR = Pattern.compile("\\p{Cs}");

  /** Made once: a factory remembers the names of keys, and is slow to make. */
  private static final JSON LINE = writer(false);

  private static final JSON INDENTED = writer(true);

  private static final JSON READER =
      JSON.std.with(
          JSON.Feature.FAIL_ON_DUPLICATE_MAP_KEYS, JSON.Feature.USE_BIG_DECIMAL_FOR_FLOATS);

  private Json() {}

  private static JSON writer(boolean indented) {
    JsonFactory plain =
        JsonFactory.builder().enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN).build();
    return JSON.builder(plain)
        .enable(JSON.Feature.WRITE_NULL_PROPERTIES)
        .set(JSON.Feature.PRETTY_PRINT_OUTPUT, indented)
        .build();
  }

  /** The document as indented JSON, without a newline at its end. */
  public static String write(Document document) {
    return write(document.json(), INDENTED);
  }

  /** A part of a document as JSON on one line. */
  public static String line(Map<?, ?> values) {
    return write(values, LINE);
  }

  private static String write(Map<?, ?> values, JSON json) {
    try {
      return HALF_A_PAIR
          .matcher(json.asString(values))
          .replaceAll(half -> "\\\\u%04x".formatted((int) half.group().charAt(0)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * A JSON document as ordered maps, lists, strings, booleans, numbers and nulls; fractions are
   * {@code BigDecimal}s, so that they are written again as they were.
   *
   * @throws IOException when the text is no JSON object, or repeats a key
   */
  public static Map<String, Object> read(String text) throws IOException {
    return READER.mapFrom(text);
  }
}
