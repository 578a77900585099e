package dev.loopgauge.verify;

import dev.loopgauge.chain.Change;
import dev.loopgauge.chain.RigChange;
import dev.loopgauge.signal.SampleRate;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What is known of a rig for sure, since its audio server says so.
 *
 * @param blockSize the block size that the host runs at, in samples
 * @param rate the sample rate that it runs at
 */
public record KnownFacts(OptionalInt blockSize, Optional<SampleRate> rate) {
  /** Nothing is known. */
  public static final KnownFacts NONE = new KnownFacts(OptionalInt.empty(), Optional.empty());

  /** Both are known. */
  public static KnownFacts of(int blockSize, SampleRate rate) {
    return new KnownFacts(OptionalInt.of(blockSize), Optional.of(rate));
  }

  /** Whether these facts say that a change can't be so. */
  boolean refute(Change change) {
    if (change instanceof RigChange.BlockSize size) {
      return blockSize.isPresent() && blockSize.getAsInt() != size.samples();
    }
    return change instanceof RigChange.WordClock clock
        && rate.isPresent()
        && !rate.get().equals(clock.rate());
  }
}
