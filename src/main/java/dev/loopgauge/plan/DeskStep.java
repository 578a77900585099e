package dev.loopgauge.plan;

import dev.loopgauge.chain.Air;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.signal.Latency;
import java.math.BigDecimal;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The steps in which a desk sets delays: {@code samples}, {@code 0.1ms}, {@code 0.01m}, {@code
 * 1ft}.
 *
 * @param size how large one step is, in its unit, above 0 and at most {@value #LARGEST}
 * @param unit the unit
 */
public record DeskStep(double size, Unit unit) {
  /** The largest step accepted, in any unit: coarser than any desk. */
  public static final double LARGEST = 1_000;

  /** One sample at a time. */
  public static final DeskStep SAMPLE = new DeskStep(1, Unit.SAMPLES);

  private static final Pattern TEXT =
      Pattern.compile("(\\d{1,6}(?:\\.\\d{1,9})?)?(samples?|ms|m|ft)");

  /** What desks show delays in. */
  public enum Unit {
    /** Samples of the word clock. */
    SAMPLES("samples"),
    /** Milliseconds. */
    MS("ms"),
    /** Metres of air at the chain's temperature. */
    METRES("m"),
    /** Feet of air at the chain's temperature. */
    FEET("ft");

    private final String label;

    Unit(String label) {
      this.label = label;
    }

    private double samples(Chain chain) {
      double rate = chain.rate().hertz();
      double metre = rate / Air.metresPerSecond(chain.airTemperatureC());
      return switch (this) {
        case SAMPLES -> 1;
        case MS -> rate / 1000;
        case METRES -> metre;
        case FEET -> metre * Air.METRES_PER_FOOT;
      };
    }

    private static Unit of(String text) {
      return switch (text) {
        case "ms" -> MS;
        case "m" -> METRES;
        case "ft" -> FEET;
        default -> SAMPLES;
      };
    }
  }

  /**
   * Checks the size.
   *
   * @throws IllegalArgumentException when out of range
   */
  public DeskStep {
    if (!(size > 0 && size <= LARGEST)) {
      throw new IllegalArgumentException(
          "a delay step must be above 0 and at most " + LARGEST + ", not " + size);
    }
  }

  /**
   * Reads a step; without a number it is one unit.
   *
   * @throws IllegalArgumentException when it is none
   */
  public static DeskStep parse(String text) {
    Matcher matcher = TEXT.matcher(text);
    if (!matcher.matches()) {
      throw new IllegalArgumentException(
          "a delay step must be like samples, 0.1ms, 0.01m or 1ft, not '" + text + "'");
    }
    double size = matcher.group(1) == null ? 1 : Double.parseDouble(matcher.group(1));
    return new DeskStep(size, Unit.of(matcher.group(2)));
  }

  /** The setting nearest to a delay of 0 or more, the larger of two that are as near. */
  Latency nearest(Latency delay, Chain chain) {
    return nearest(delay, chain, OptionalDouble.empty());
  }

  /** The same, on a desk that delays by no more than this, in ms. */
  Latency nearest(Latency delay, Chain chain, OptionalDouble longestMs) {
    double step = samples(chain);
    double steps = Math.floor(delay.samples() / step + 0.5);
    double most =
        longestMs.isPresent()
            ? Math.floor(Latency.ofMs(longestMs.getAsDouble(), delay.rate()).samples() / step)
            : steps;
    return new Latency(Math.min(steps, most) * step, delay.rate());
  }

  /** How many samples one step is. */
  double samples(Chain chain) {
    return size * unit.samples(chain);
  }

  /** A few words for the screen: {@code 0.1 ms}. */
  public String label() {
    String number = BigDecimal.valueOf(size).stripTrailingZeros().toPlainString();
    return this.equals(SAMPLE) ? "1 sample" : number + " " + unit.label;
  }
}
