package dev.loopgauge.report.rig;

import dev.loopgauge.measure.Calibration;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.Set;

/**
 * A calibration, as documents hold it.
 *
 * @param referenceSend with {@code referenceReturn} the reference cable that it was compared with;
 *     left out where there was none
 */
public record CalibrationRecord(
    String measuredAt,
    String backend,
    String output,
    String input,
    int sampleRateHz,
    int bufferSamples,
    int send,
    int ret,
    Optional<Integer> referenceSend,
    Optional<Integer> referenceReturn,
    BigDecimal delaySamples,
    BigDecimal delayMs,
    BigDecimal uncertaintySamples)
    implements Sparse {
  private static final int MOST_DECIMALS = 3;

  /**
   * Two pairs of channels that are alike differ by less, in samples: one clock samples both.
   * (Phases of CS5361's channels differ by 0.0001 degrees: its maker's data sheet.)
   */
  private static final double MOST_OF_LIKE_PAIRS = 1;

  /** Of a calibration. */
  static CalibrationRecord of(Calibration calibration) {
    double uncertainty = calibration.uncertaintySamples();
    return new CalibrationRecord(
        calibration.measuredAt().toString(),
        calibration.backend(),
        calibration.output(),
        calibration.input(),
        calibration.rate().hertz(),
        calibration.bufferSamples(),
        calibration.cable().send(),
        calibration.cable().ret(),
        calibration.reference().map(ChannelPair::send),
        calibration.reference().map(ChannelPair::ret),
        Written.samples(calibration.delaySamples(), uncertainty),
        Written.ms(calibration.delay().ms(), uncertainty * 1000 / calibration.rate().hertz()),
        Written.uncertainSamples(uncertainty));
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("referenceSend", "referenceReturn");
  }

  /** The cable's delay in words. */
  String told() {
    if (referenceReturn.isEmpty()) {
      return told(delaySamples, delayMs);
    }
    String order = delaySamples.signum() < 0 ? ", before" : ", after";
    return told(delaySamples.abs(), delayMs.abs()) + order + " the reference";
  }

  private String told(BigDecimal samples, BigDecimal ms) {
    return Numbers.plusMinus(samples.doubleValue(), uncertaintySamples.doubleValue(), MOST_DECIMALS)
        + (" samples  " + Numbers.plain(ms.doubleValue(), MOST_DECIMALS) + " ms");
  }

  /** What it holds for, in words. */
  String conditions() {
    return backend
        + (", " + output + " send " + send)
        + (" to " + input + " return " + ret)
        + referenceReturn.map(this::beside).orElse("")
        + (", " + sampleRateHz + " Hz, ")
        + (referenceReturn.isPresent() ? "any block" : "block " + bufferSamples);
  }

  private String beside(int returned) {
    return " beside send " + referenceSend.orElse(returned) + " to return " + returned;
  }

  /** What to make sure of; empty where the skew is that of two like pairs of channels. */
  Optional<String> doubt() {
    return referenceReturn.isPresent() && delaySamples.abs().doubleValue() > MOST_OF_LIKE_PAIRS
        ? Optional.of(
            "more than 1 sample: right if one pair passes converters that the other doesn't; else"
                + " is the path still patched?")
        : Optional.empty();
  }
}
