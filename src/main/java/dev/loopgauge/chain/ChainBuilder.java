package dev.loopgauge.chain;

import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Puts a {@link Chain} together; what isn't set is empty, or as a chain file has it by default. */
public final class ChainBuilder {
  /** Stands in for the block size where no stage counts blocks, so that it changes nothing. */
  public static final int UNUSED_BLOCK_SIZE = 64;

  private final String name;
  private SampleRate rate;
  private int blockSize = UNUSED_BLOCK_SIZE;
  private double airTemperatureC = Air.REFERENCE_C;
  private Map<String, Stage> stages = Map.of();
  private Map<String, ChainPath> paths = Map.of();
  private Map<String, Picture> pictures = Map.of();
  private Map<String, Mix> mixes = Map.of();
  private Map<Listener, ListenerLimits> limits = Map.of();
  private Map<String, HostSettings> hosts = Map.of();
  private Map<String, Position> positions = Map.of();
  private Optional<Patch> reference = Optional.empty();
  private List<Notice> notices = List.of();

  /** A rig of that name at that rate, with nothing in it. */
  public ChainBuilder(String name, SampleRate rate) {
    this.name = name;
    this.rate = rate;
  }

  ChainBuilder(Chain chain) {
    this(chain.name(), chain.rate());
    blockSize = chain.blockSize();
    airTemperatureC = chain.airTemperatureC();
    stages = chain.stages();
    paths = chain.paths();
    pictures = chain.pictures();
    mixes = chain.mixes();
    limits = chain.limits();
    hosts = chain.hosts();
    positions = chain.positions();
    reference = chain.reference();
    notices = chain.notices();
  }

  /** Sets the sample rate. */
  public ChainBuilder rate(SampleRate newRate) {
    rate = newRate;
    return this;
  }

  /** Sets the block size, in samples. */
  public ChainBuilder blockSize(int newBlockSize) {
    blockSize = newBlockSize;
    return this;
  }

  /** Sets the temperature of the air, in degrees C. */
  public ChainBuilder airTemperatureC(double celsius) {
    airTemperatureC = celsius;
    return this;
  }

  /** Sets the stages by their names. */
  public ChainBuilder stages(Map<String, Stage> all) {
    stages = all;
    return this;
  }

  /** Sets the paths by their names. */
  public ChainBuilder paths(Map<String, ChainPath> all) {
    paths = all;
    return this;
  }

  /** Sets the pictures by their names. */
  public ChainBuilder pictures(Map<String, Picture> all) {
    pictures = all;
    return this;
  }

  /** Sets the mixes by their names. */
  public ChainBuilder mixes(Map<String, Mix> all) {
    mixes = all;
    return this;
  }

  /** Sets the limits that differ from those built in. */
  public ChainBuilder limits(Map<Listener, ListenerLimits> all) {
    limits = all;
    return this;
  }

  /** Sets the computers with settings of their own, by their names. */
  public ChainBuilder hosts(Map<String, HostSettings> all) {
    hosts = all;
    return this;
  }

  /** Sets the positions by their names. */
  public ChainBuilder positions(Map<String, Position> all) {
    positions = all;
    return this;
  }

  /** Sets where the reference is plugged in. */
  public ChainBuilder reference(Optional<Patch> patch) {
    reference = patch;
    return this;
  }

  /** Sets what may be a mistake in the file. */
  public ChainBuilder notices(List<Notice> all) {
    notices = all;
    return this;
  }

  /**
   * The chain.
   *
   * @throws IllegalArgumentException when it breaks a rule of {@link Chain}
   */
  public Chain build() {
    return new Chain(
        name,
        rate,
        blockSize,
        airTemperatureC,
        stages,
        paths,
        pictures,
        mixes,
        limits,
        hosts,
        positions,
        reference,
        notices);
  }
}
