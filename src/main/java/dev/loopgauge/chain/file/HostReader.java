package dev.loopgauge.chain.file;

import dev.loopgauge.chain.HostSettings;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Reads the {@code hosts} of a chain file: computers with settings of their own. */
final class HostReader implements EntryReader<HostSettings> {
  private final ClockReader clocks;

  HostReader(ClockReader clocks) {
    this.clocks = clocks;
  }

  @Override
  public HostSettings read(String name, YamlValue value) throws ChainFormatException {
    YamlFields fields = value.fields("a host", List.of(ClockReader.BLOCK_SIZE, ClockReader.RATE));
    if (fields.values().isEmpty()) {
      throw value.refuse(
          ClockReader.BLOCK_SIZE + " or " + ClockReader.RATE,
          "state at least one, or take the host out");
    }
    Optional<Integer> blockSize = fields.optional(ClockReader.BLOCK_SIZE, clocks::blockSize);
    return new HostSettings(
        name,
        blockSize.map(OptionalInt::of).orElseGet(OptionalInt::empty),
        fields.optional(ClockReader.RATE, clocks::rate));
  }
}
