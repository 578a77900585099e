package dev.loopgauge.chain;

import java.util.OptionalDouble;

/**
 * A delay as it is stated: one number in one of the units that data sheets, hosts and tape measures
 * speak in. Counts of samples, blocks and packets are kept when the sample rate changes, so their
 * time scales; times and distances are kept as they are, so their samples scale. Every number is 0
 * to {@value #LARGEST}, and may be fractional.
 */
public sealed interface Delay {
  /** The largest number accepted, in any unit; it keeps every sum finite. */
  double LARGEST = 1e9;

  /** The delay in samples. */
  double samples(Conditions conditions);

  /** Whether this is sound travelling through air, which a patched cable goes round. */
  default boolean isAir() {
    return airMetres().isPresent();
  }

  /** How many metres of air this is, where it is stated as a distance. */
  default OptionalDouble airMetres() {
    return OptionalDouble.empty();
  }

  private static void check(double number, String unit) {
    if (!(number >= 0 && number <= LARGEST)) {
      throw new IllegalArgumentException(unit + " must be 0 to " + LARGEST + ", not " + number);
    }
  }

  /**
   * Samples of the word clock.
   *
   * @param count how many
   */
  record Samples(double count) implements Delay {
    /** Checks the range. */
    public Samples {
      check(count, "samples");
    }

    @Override
    public double samples(Conditions conditions) {
      return count;
    }
  }

  /**
   * Milliseconds.
   *
   * @param ms how many
   */
  record Milliseconds(double ms) implements Delay {
    /** Checks the range. */
    public Milliseconds {
      check(ms, "ms");
    }

    @Override
    public double samples(Conditions conditions) {
      return ms * conditions.rate().hertz() / 1000;
    }
  }

  /**
   * Blocks of the host.
   *
   * @param count how many
   */
  record Blocks(double count) implements Delay {
    /** Checks the range. */
    public Blocks {
      check(count, "blocks");
    }

    @Override
    public double samples(Conditions conditions) {
      return count * conditions.blockSize();
    }
  }

  /**
   * Packets of an audio network.
   *
   * @param count how many
   * @param time how long one is
   */
  record Packets(double count, PacketTime time) implements Delay {
    /** Checks the range. */
    public Packets {
      check(count, "packets");
    }

    @Override
    public double samples(Conditions conditions) {
      return count * time.samples(conditions.rate());
    }
  }

  /**
   * Metres of air.
   *
   * @param count how many
   */
  record Metres(double count) implements Delay {
    /** Checks the range. */
    public Metres {
      check(count, "metres");
    }

    @Override
    public double samples(Conditions conditions) {
      return conditions.samplesOfAir(count);
    }

    @Override
    public OptionalDouble airMetres() {
      return OptionalDouble.of(count);
    }
  }

  /**
   * Feet of air.
   *
   * @param count how many
   */
  record Feet(double count) implements Delay {
    /** Checks the range. */
    public Feet {
      check(count, "feet");
    }

    @Override
    public double samples(Conditions conditions) {
      return conditions.samplesOfAir(count * Air.METRES_PER_FOOT);
    }

    @Override
    public OptionalDouble airMetres() {
      return OptionalDouble.of(count * Air.METRES_PER_FOOT);
    }
  }

  /**
   * Frames of a picture; stages of sound never have them.
   *
   * @param count how many
   */
  record Frames(double count) implements Delay {
    /** Checks the range. */
    public Frames {
      check(count, "frames");
    }

    /**
     * The delay in samples.
     *
     * @throws IllegalStateException when the conditions have no frame rate
     */
    @Override
    public double samples(Conditions conditions) {
      if (conditions.frameRate().isEmpty()) {
        throw new IllegalStateException("frames need a frame rate");
      }
      return conditions.frameRate().get().samples(count, conditions.rate());
    }
  }
}
