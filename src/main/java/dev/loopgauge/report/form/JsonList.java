package dev.loopgauge.report.form;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A JSON document that is mostly one list of objects, each with the line it begins on.
 *
 * @param head what stands beside the list
 * @param items the objects
 */
public record JsonList(Map<String, Object> head, List<Item> items) {
  private static final JSON READER = JSON.std.with(JSON.Feature.FAIL_ON_DUPLICATE_MAP_KEYS);

  /**
   * One object.
   *
   * @param line the line it begins on, counted from 1
   * @param values what it holds
   */
  public record Item(long line, Map<String, Object> values) {}

  /** The text is no such document. */
  public static final class BrokenException extends Exception {
    private static final long serialVersionUID = 1L;

    private final long line;

    private BrokenException(long line, String found, Throwable cause) {
      super(found, cause);
      this.line = line;
    }

    /** The line that can't be read, counted from 1. */
    public long line() {
      return line;
    }
  }

  /**
   * Reads a document.
   *
   * @param key the key of the list
   * @throws BrokenException when the text is no JSON object, or the list holds something else
   */
  public static JsonList read(String text, String key) throws BrokenException {
    JsonList list = new JsonList(new LinkedHashMap<>(), new ArrayList<>());
    try (JsonParser parser = new JsonFactory().createParser(text)) {
      try {
        list.fill(parser, key);
      } catch (JacksonException e) {
        throw new BrokenException(line(parser), "something that can't be read", e);
      }
      return list;
    } catch (IOException e) {
      throw new BrokenException(1, "something that can't be read", e);
    }
  }

  private static long line(JsonParser parser) {
    return Math.max(1, parser.currentLocation().getLineNr());
  }

  private void fill(JsonParser parser, String key) throws IOException, BrokenException {
    expect(parser, JsonToken.START_OBJECT, parser.nextToken());
    while (parser.nextToken() == JsonToken.FIELD_NAME) {
      String name = parser.currentName();
      JsonToken value = parser.nextToken();
      if (name.equals(key)) {
        expect(parser, JsonToken.START_ARRAY, value);
        while (parser.nextToken() != JsonToken.END_ARRAY) {
          expect(parser, JsonToken.START_OBJECT, parser.currentToken());
          items.add(new Item(line(parser), READER.mapFrom(parser)));
        }
      } else {
        head.put(name, READER.anyFrom(parser));
      }
    }
    if (parser.nextToken() != null) {
      throw new BrokenException(line(parser), "more behind its end", null);
    }
  }

  private static void expect(JsonParser parser, JsonToken expected, JsonToken found)
      throws BrokenException {
    if (found != expected) {
      String text = found == null ? "the end of the file" : "'" + found.asString() + "'";
      throw new BrokenException(line(parser), text, null);
    }
  }
}
