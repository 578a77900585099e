package dev.loopgauge.chain.file;

import dev.loopgauge.chain.Patch;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Reads where a path or the reference is plugged in. */
final class PatchReader {
  private static final String SEND = "send";
  private static final String RETURN = "return";
  private static final String AGAINST = "against";
  private static final String EXAMPLE = "{ send: 2, return: 2 }";

  private PatchReader() {}

  static Patch ofPath(YamlValue value) throws ChainFormatException {
    YamlFields fields = value.fields("a patch", List.of(SEND, RETURN, AGAINST));
    Optional<Integer> against = fields.optional(AGAINST, channel -> channel(AGAINST, channel));
    return read(fields, against.map(OptionalInt::of).orElseGet(OptionalInt::empty));
  }

  static Patch ofReference(YamlValue value) throws ChainFormatException {
    return read(value.fields("the reference", List.of(SEND, RETURN)), OptionalInt.empty());
  }

  private static Patch read(YamlFields fields, OptionalInt against) throws ChainFormatException {
    return new Patch(
        channel(SEND, fields.required(SEND, EXAMPLE)),
        channel(RETURN, fields.required(RETURN, EXAMPLE)),
        against);
  }

  private static int channel(String key, YamlValue value) throws ChainFormatException {
    return value.whole(key, 1, Patch.HIGHEST);
  }
}
