package dev.loopgauge.chain;

import dev.loopgauge.signal.SampleRate;
import java.util.Locale;

/** A change of a computer that has settings of its own. */
public sealed interface HostChange extends Change {
  /** The computer, by its name in the chain file. */
  String host();

  @Override
  default String written() {
    return "host." + host() + "." + kind().key() + "=" + value();
  }

  /**
   * The computer of that name.
   *
   * @throws ChangeFormatException when the chain has none
   */
  private static HostSettings in(Chain chain, String name) {
    HostSettings found = chain.hosts().get(name);
    if (found == null) {
      throw new ChangeFormatException(
          "expected a host of '" + chain.name() + "', found " + Shown.quoted(name),
          Nearest.hint(name, chain.hosts().keySet()));
    }
    return found;
  }

  /**
   * It runs at another block size.
   *
   * @param host its name
   * @param samples its block, 1 to {@value Conditions#LARGEST_BLOCK} samples
   */
  record BlockSize(String host, int samples) implements HostChange {
    /**
     * Checks the range.
     *
     * @throws IllegalArgumentException when out of range
     */
    public BlockSize {
      Conditions.checkBlockSize(samples);
    }

    @Override
    public ChangeKind kind() {
      return ChangeKind.BLOCK_SIZE;
    }

    @Override
    public String value() {
      return String.valueOf(samples);
    }

    @Override
    public Chain on(Chain chain) {
      return chain.withHost(in(chain, host).withBlockSize(samples));
    }

    @Override
    public String told(Chain before) {
      return String.format(
          Locale.ROOT,
          "'%s' runs at a block of %s samples, not %s",
          host,
          samples,
          in(before, host).within(before.conditions()).blockSize());
    }

    @Override
    public String check() {
      return "the block size in the audio settings of '" + host + "'";
    }
  }

  /**
   * It runs at another sample rate.
   *
   * @param host its name
   * @param rate its rate
   */
  record WordClock(String host, SampleRate rate) implements HostChange {
    @Override
    public ChangeKind kind() {
      return ChangeKind.SAMPLE_RATE;
    }

    @Override
    public String value() {
      return String.valueOf(rate.hertz());
    }

    @Override
    public Chain on(Chain chain) {
      return chain.withHost(in(chain, host).withRate(rate));
    }

    @Override
    public String told(Chain before) {
      return String.format(
          Locale.ROOT,
          "'%s' runs at %s Hz, not %s",
          host,
          rate.hertz(),
          in(before, host).within(before.conditions()).rate().hertz());
    }

    @Override
    public String check() {
      return "the sample rate in the audio settings of '" + host + "'";
    }
  }
}
