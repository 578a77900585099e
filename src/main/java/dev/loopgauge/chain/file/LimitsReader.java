package dev.loopgauge.chain.file;

import dev.loopgauge.chain.Delay;
import dev.loopgauge.chain.Listener;
import dev.loopgauge.chain.ListenerLimits;
import java.util.List;
import java.util.OptionalDouble;

/** Reads the {@code listeners} of a chain file: limits that replace the built-in ones. */
final class LimitsReader {
  private static final String CAUTION = "caution-ms";
  private static final String LIMIT = "limit-ms";
  private static final String RULE = "set in the chain file";

  private LimitsReader() {}

  /** The listener's limits; what is left out stays as built in, or follows a lower limit down. */
  static ListenerLimits read(Listener listener, YamlValue value) throws ChainFormatException {
    YamlFields fields = value.fields("a listener's limits", List.of(CAUTION, LIMIT));
    if (fields.values().isEmpty()) {
      throw value.refuse(CAUTION + " or " + LIMIT, "state at least one, or take the entry out");
    }
    ListenerLimits builtIn = ListenerLimits.builtIn(listener);
    OptionalDouble limit = number(fields, LIMIT, Delay.LARGEST, builtIn.limitMs());
    double highest = limit.orElse(Delay.LARGEST);
    OptionalDouble caution =
        number(fields, CAUTION, highest, lowered(builtIn.cautionMs(), highest));
    return new ListenerLimits(caution, limit, RULE);
  }

  private static OptionalDouble number(
      YamlFields fields, String key, double highest, OptionalDouble otherwise)
      throws ChainFormatException {
    return fields
        .optional(key, value -> OptionalDouble.of(value.number(key, 0, highest)))
        .orElse(otherwise);
  }

  private static OptionalDouble lowered(OptionalDouble caution, double highest) {
    return caution.isPresent()
        ? OptionalDouble.of(Math.min(caution.getAsDouble(), highest))
        : caution;
  }
}
