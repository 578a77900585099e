package dev.loopgauge.chain.file;

import dev.loopgauge.chain.Expectation;
import dev.loopgauge.chain.ExpectedLevel;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads what a path's return is expected to be like. */
final class ExpectReader {
  private static final String POLARITY = "polarity";
  private static final String LEVEL = "level-db";
  private static final String LEVEL_TOLERANCE = "level-tolerance-db";
  private static final String RESPONSE_TOLERANCE = "response-tolerance-db";
  private static final List<String> KEYS =
      List.of(POLARITY, LEVEL, LEVEL_TOLERANCE, RESPONSE_TOLERANCE);
  private static final Map<String, Boolean> POLARITIES =
      YamlChoice.by(new Boolean[] {false, true}, turned -> turned ? "inverted" : "normal");

  private ExpectReader() {}

  static Expectation read(YamlValue value) throws ChainFormatException {
    YamlFields fields = value.fields("expect", KEYS);
    if (fields.values().isEmpty()) {
      throw value.refuse(
          "one of " + String.join(", ", KEYS), "state at least one, or take expect out");
    }
    Optional<Double> response = fields.optional(RESPONSE_TOLERANCE, ExpectReader::tolerance);
    return new Expectation(
        fields.optional(POLARITY, polarity -> polarity.choice(POLARITY, POLARITIES)),
        level(fields),
        response.map(OptionalDouble::of).orElseGet(OptionalDouble::empty));
  }

  private static Optional<ExpectedLevel> level(YamlFields fields) throws ChainFormatException {
    Optional<Double> tolerance = fields.optional(LEVEL_TOLERANCE, ExpectReader::tolerance);
    if (tolerance.isPresent()) {
      fields.required(LEVEL, LEVEL + ": -6, beside its tolerance");
    }
    double most = ExpectedLevel.LARGEST_DB;
    return fields
        .optional(LEVEL, value -> value.number(LEVEL, -most, most))
        .map(db -> new ExpectedLevel(db, tolerance.orElse(ExpectedLevel.USUAL_TOLERANCE_DB)));
  }

  private static double tolerance(YamlValue value) throws ChainFormatException {
    return value.number("a tolerance in dB", 0, ExpectedLevel.LARGEST_DB);
  }
}
