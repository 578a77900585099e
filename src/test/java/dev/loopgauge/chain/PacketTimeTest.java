package dev.loopgauge.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.loopgauge.signal.SampleRate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PacketTimeTest {
  /** Samples in a packet at 48 kHz: AES67-2018 section 7.2 (reported). */
  @ParameterizedTest
  @CsvSource({"125, 6", "250, 12", "333, 16", "333.333, 16", "1000, 48", "4000, 192"})
  void packetHoldsItsPublishedSamples(double microseconds, long samples) {
    assertEquals(samples, new PacketTime(microseconds).samples(new SampleRate(48_000)));
  }

  /** The count of 48 kHz is kept at 44.1 kHz, and so for their multiples (AES67-2018, reported). */
  @ParameterizedTest
  @CsvSource({
    "125,  44100, 6", "333,  44100, 16", "1000, 44100, 48", "4000, 44100, 192",
    "1000, 88200, 96", "1000, 96000, 96", "1000, 176400, 192", "333, 192000, 64"
  })
  void packetKeepsItsSamplesAtTheSisterRate(double microseconds, int hertz, long samples) {
    assertEquals(samples, new PacketTime(microseconds).samples(new SampleRate(hertz)));
  }

  @Test
  void packetAtARateOfNeitherFamilyHoldsItsNominalTime() {
    assertEquals(32, new PacketTime(1000).samples(new SampleRate(32_000)));
  }

  @Test
  void packetHoldsAtLeastOneSample() {
    assertEquals(1, new PacketTime(1).samples(new SampleRate(48_000)));
  }

  /**
   * One 1 ms packet and the least receiver buffer of three: 4 ms (AES67-2018, reported/derived).
   */
  @Test
  void leastBufferAddsThreePackets() {
    PathBudget budget =
        ChainFiles.budget(ChainFiles.rig("packets: 4, packet-time-us: 1000"), "all");
    assertEquals(192, budget.delay().samples());
    assertEquals(4, budget.delay().ms());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, 1_000_001, Double.NaN})
  void impossibleTimesAreRefused(double microseconds) {
    assertThrows(IllegalArgumentException.class, () -> new PacketTime(microseconds));
  }
}
