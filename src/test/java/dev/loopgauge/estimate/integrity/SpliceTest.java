package dev.loopgauge.estimate.integrity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.Rig;
import dev.loopgauge.estimate.ShowSound;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.StimulusKind;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A block lost or repeated within one reading is never passed over in silence. */
class SpliceTest {
  private static final int DELAY = 600;
  private static final DelayEstimator ESTIMATOR = new DelayEstimator(0.5);

  private static Signal sound(String kind) {
    SplittableRandom random = new SplittableRandom(1);
    return switch (kind) {
      case "speech" -> ShowSound.speech(Rig.RATE, 2, random);
      case "applause" -> ShowSound.applause(Rig.RATE, 2, random);
      case "sweep" -> Rig.SWEEP;
      default -> StimulusKind.MLS.of(1).render(Rig.RATE);
    };
  }

  /** The sound at half its level; after a part of it, later by some samples. */
  private static double[] spliced(Signal sound, double part, int later) {
    double[] ret = new double[sound.length() + Rig.RATE.hertz()];
    int at = (int) (part * sound.length());
    for (int i = DELAY; i < ret.length; i++) {
      int from = i - DELAY - (i - DELAY >= at ? later : 0);
      ret[i] = from >= 0 && from < sound.length() ? 0.5 * sound.at(from) : 0;
    }
    return ret;
  }

  private static Estimate estimate(Signal sound, double[] ret) {
    SplittableRandom random = new SplittableRandom(9);
    for (int i = 0; i < ret.length; i++) {
      ret[i] += 1e-4 * random.nextGaussian();
    }
    return ESTIMATOR.estimate(sound, Signal.of(Rig.RATE, ret));
  }

  @Tag("campaign")
  @ParameterizedTest
  @CsvSource({
    "sweep, 0.1, -64", "sweep, 0.1, 512", "sweep, 0.25, -1024", "sweep, 0.25, 64",
    "sweep, 0.5, 64", "sweep, 0.5, -256", "sweep, 0.75, 512", "sweep, 0.9, -64",
    "mls, 0.1, -64", "mls, 0.5, 512", "mls, 0.9, 128", "speech, 0.1, 256",
    "speech, 0.5, -64", "speech, 0.75, 64", "applause, 0.5, 128", "applause, 0.9, -1024",
  })
  void tellsWhereABlockWasLostOrRepeatedAndHowLongItIs(String kind, double part, int later) {
    Signal sound = sound(kind);
    Estimate estimate = estimate(sound, spliced(sound, part, later));
    assertInstanceOf(Estimate.Refused.class, estimate, estimate::toString);
    Finding finding =
        estimate.findings().stream()
            .filter(f -> f.text().startsWith("at "))
            .findFirst()
            .orElseThrow(() -> new AssertionError(estimate));
    assertEquals(FindingCode.DROPOUT, finding.code());
    assertTrue(finding.text().contains(later < 0 ? "were lost" : "put in"), finding.text());
    String[] words = finding.text().split(" ", -1);
    double seconds = (part * sound.length() + DELAY) / Rig.RATE.hertz();
    boolean pauses = kind.equals("speech");
    assertEquals(seconds, Double.parseDouble(words[1]), pauses ? 0.1 : 0.03, finding.text());
    assertEquals(Math.abs(later), Double.parseDouble(words[4]), 12, finding.text());
  }

  /** By so little that both delays fit one filter. */
  @ParameterizedTest
  @CsvSource({
    "mls, 0.5, 1",
    "mls, 0.3, -2",
    "speech, 0.4, -1",
    "speech, 0.6, 4",
    "applause, 0.6, 3",
    "applause, 0.2, -1",
  })
  void tellsAStepOfAFewSamples(String kind, double part, int later) {
    Signal played = sound(kind);
    Estimate estimate = estimate(played, spliced(played, part, later));
    assertInstanceOf(Estimate.Refused.class, estimate, estimate::toString);
    List<Finding> found = splices(estimate);
    assertEquals(1, found.size(), estimate::toString);
    String[] words = found.get(0).text().split(" ", -1);
    double seconds = (part * played.length() + DELAY) / Rig.RATE.hertz();
    assertEquals(seconds, Double.parseDouble(words[1]), 0.15, found.get(0).text());
    assertEquals(Math.abs(later), Double.parseDouble(words[4]), found.get(0).text());
    String sound = Math.abs(later) == 1 ? " of sound was " : " of sound were ";
    assertTrue(found.get(0).text().contains(sound + (later < 0 ? "lost" : "put in")));
  }

  /** Less than half a sample is no sample that was lost, whatever moved it. */
  @ParameterizedTest
  @CsvSource({"mls", "speech", "applause"})
  void aThirdOfASampleIsNoLostSound(String kind) {
    Signal sound = sound(kind);
    double[] ret = spliced(sound, 0, 0);
    double[] later = spliced(sound, 0, 1);
    for (int i = ret.length / 3; i < ret.length; i++) {
      ret[i] += (later[i] - ret[i]) / 3;
    }
    assertEquals(List.of(), splices(estimate(sound, ret)));
  }

  @ParameterizedTest
  @CsvSource({"sweep", "mls", "speech", "applause"})
  void aWholeReturnHasNoSuchFinding(String kind) {
    Signal sound = sound(kind);
    assertEquals(List.of(), estimate(sound, spliced(sound, 0.5, 0)).findings());
  }

  /** What a cable inside the computer brings back: the same numbers, rounded to 32-bit floats. */
  @ParameterizedTest
  @CsvSource({"sweep", "mls", "speech", "applause"})
  void aPerfectCopyHasNoSuchFinding(String kind) {
    Signal sound = sound(kind);
    double[] ret = spliced(sound, 0, 0);
    for (int i = 0; i < ret.length; i++) {
      ret[i] = (float) ret[i];
    }
    assertEquals(List.of(), ESTIMATOR.estimate(sound, Signal.of(Rig.RATE, ret)).findings());
  }

  @ParameterizedTest
  @CsvSource({"sweep", "mls", "speech", "applause"})
  void twoArrivalsThatLastAreNoTear(String kind) {
    Signal sound = sound(kind);
    double[] ret = spliced(sound, 0, 0);
    double[] other = spliced(sound, 0, 300);
    for (int i = 0; i < ret.length; i++) {
      ret[i] += 0.8 * other[i];
    }
    Estimate estimate = estimate(sound, ret);
    assertEquals(
        List.of(FindingCode.TWO_ARRIVALS),
        estimate.findings().stream().map(Finding::code).toList(),
        estimate::toString);
  }

  /** A bass loudspeaker that is 10 ms late below a crossover at 100 Hz, second order. */
  @Test
  void aLateBassIsNoTear() {
    double[] whole = spliced(Rig.SWEEP, 0, 0);
    double[] low = lowPassed(whole);
    double[] ret = new double[whole.length];
    for (int i = 480; i < ret.length; i++) {
      ret[i] = whole[i] - low[i] + low[i - 480];
    }
    assertEquals(List.of(), splices(estimate(Rig.SWEEP, ret)));
  }

  @Test
  void aCoughIsNoTear() {
    double[] ret = spliced(Rig.SWEEP, 0, 0);
    SplittableRandom random = new SplittableRandom(5);
    for (int i = 0; i < 4000; i++) {
      ret[20_000 + i] += 0.3 * Math.exp(-i / 800.0) * random.nextGaussian();
    }
    assertEquals(List.of(), splices(estimate(Rig.SWEEP, ret)));
  }

  private static double[] lowPassed(double[] samples) {
    double share = 1 - Math.exp(-2 * Math.PI * 100 / Rig.RATE.hertz());
    double[] low = new double[samples.length];
    double once = 0;
    double twice = 0;
    for (int i = 0; i < samples.length; i++) {
      once += share * (samples[i] - once);
      twice += share * (once - twice);
      low[i] = twice;
    }
    return low;
  }

  private static List<Finding> splices(Estimate estimate) {
    return estimate.findings().stream().filter(f -> f.text().contains("before it")).toList();
  }
}
