package dev.loopgauge.chain.file;

import dev.loopgauge.chain.Air;
import dev.loopgauge.chain.Delay;
import dev.loopgauge.chain.Position;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** Reads the {@code positions} of a chain file. */
final class PositionReader implements EntryReader<Position> {
  static final String DIRECT_METRES = "direct-metres";
  static final String DIRECT_FEET = "direct-feet";
  private static final String THROW_METRES = "throw-metres";
  private static final String THROW_FEET = "throw-feet";
  private static final List<String> KEYS =
      List.of(DIRECT_METRES, DIRECT_FEET, THROW_METRES, THROW_FEET);

  @Override
  public Position read(String name, YamlValue position) throws ChainFormatException {
    YamlFields fields = position.fields("a position", KEYS);
    return new Position(name, direct(fields), throwMetres(fields));
  }

  private static OptionalDouble direct(YamlFields fields) throws ChainFormatException {
    List<String> stated = fields.among(List.of(DIRECT_METRES, DIRECT_FEET));
    if (stated.isEmpty()) {
      return OptionalDouble.empty();
    }
    fields.checkSingle(stated, "one direct distance in the position", "keep one of them");
    String key = stated.get(0);
    return OptionalDouble.of(metres(key, fields.values().get(key), key.equals(DIRECT_FEET)));
  }

  private static Map<String, Double> throwMetres(YamlFields fields) throws ChainFormatException {
    List<String> stated = fields.among(List.of(THROW_METRES, THROW_FEET));
    if (stated.isEmpty()) {
      fields.required(THROW_METRES, THROW_METRES + ": { main-pa: 12 }");
    }
    fields.checkSingle(stated, "one list of throws in the position", "keep one of them");
    String key = stated.get(0);
    YamlValue list = fields.values().get(key);
    Map<String, Double> metres = new LinkedHashMap<>();
    for (Map.Entry<String, YamlValue> entry : list.entries(key).entrySet()) {
      metres.put(entry.getKey(), metres(key, entry.getValue(), key.equals(THROW_FEET)));
    }
    if (metres.isEmpty()) {
      throw list.refuse("at least one loudspeaker", "write one, such as { main-pa: 12 }");
    }
    return metres;
  }

  private static double metres(String key, YamlValue value, boolean feet)
      throws ChainFormatException {
    double number = value.number(key, 0, Delay.LARGEST);
    return feet ? number * Air.METRES_PER_FOOT : number;
  }
}
