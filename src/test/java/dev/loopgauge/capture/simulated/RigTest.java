package dev.loopgauge.capture.simulated;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.signal.SampleRate;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The path of {@link Rigs}: 12 samples, 0.8 ms, 2 blocks of 64, a limiter of 240, 1.8 m of air. */
final class RigTest {
  private static final SampleRate RATE = new SampleRate(48_000);

  @ParameterizedTest
  @CsvSource({
    "'', 418.4",
    "block-size=128, 546.4",
    "absent=limiter, 178.4",
    "twice=limiter, 658.4",
    "twice=limiter block-size=128, 786.4",
    "absent=host-blocks block-size=128, 290.4",
    "extra-block=host-blocks, 482.4",
    "hum=-20, 418.4"
  })
  void isAsLateAsTheChainWithItsFaults(String faults, double samples) {
    assertEquals(samples, rig(faults, RATE).loop().samples(), 1e-9);
  }

  @ParameterizedTest
  @CsvSource({"48000, 418.4", "96000, 456.8", "44100, 415.28"})
  void followsTheRateOfTheSession(int hertz, double samples) {
    assertEquals(samples, rig("", new SampleRate(hertz)).loop().samples(), 1e-9);
  }

  /** 380 samples take 48/44.1 as long, 0.8 ms stays: derived. */
  @Test
  void slowerClockMakesCountedSamplesLonger() {
    double expected = 380 * 48 / 44.1 + 38.4;
    assertEquals(expected, rig("sample-rate=44100", RATE).loop().samples(), 1e-9);
  }

  @ParameterizedTest
  @CsvSource({"'', 48000, 64", "block-size=128, 48000, 128", "sample-rate=96000, 48000, 32"})
  void losesBlocksOfTheHostsLength(String faults, int hertz, int samples) {
    assertEquals(samples, rig(faults, new SampleRate(hertz)).blockSize());
  }

  @Test
  void refusesFiltersThatTheRateIsTooLowFor() {
    FaultFormatException refused =
        assertThrows(
            FaultFormatException.class, () -> rig("low-pass=8000:2", new SampleRate(16_000)));
    assertEquals(
        "this filter can't be: a corner at 8000.0 Hz lies at or above half the sample rate,"
            + " 8000.0 Hz",
        refused.getMessage());
    assertEquals("give it a lower corner, or raise the rate", refused.hint());
  }

  @ParameterizedTest
  @CsvSource({
    "absent=limitr, '''limiter'' is the nearest known name'",
    "twice=wedge-throw, 'known are stage-box-in, console, host-blocks, limiter'"
  })
  void refusesStagesThatTheLoopHasNot(String fault, String hint) {
    FaultFormatException refused = assertThrows(FaultFormatException.class, () -> rig(fault, RATE));
    assertEquals(hint, refused.hint());
  }

  private static Rig rig(String faults, SampleRate rate) {
    Chain chain = Rigs.chain();
    List<Fault> parsed =
        Arrays.stream(faults.split(" ", -1))
            .filter(f -> !f.isEmpty())
            .map(FaultFormat::parse)
            .toList();
    return Rig.of(chain, chain.path(Rigs.PATH), parsed, rate);
  }
}
