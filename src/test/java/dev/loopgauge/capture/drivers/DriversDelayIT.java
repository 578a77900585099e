package dev.loopgauge.capture.drivers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.signal.Signal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@NeedsAudioServer
class DriversDelayIT {
  private static final int[] DELAYS = {1, 63, 240, 1024, 2881};
  private static final double INVERTED_12_DB_DOWN = -0.25;

  @ParameterizedTest
  @ValueSource(ints = {64, 1024})
  void recoversWholeSampleDelaysAgainstAReferenceTwentyTimesInARow(int blockSize) throws Exception {
    try (DriversRig rig = DriversRig.start(Cycles.STRETCH, blockSize, lines());
        AudioSession session = rig.open(1 + DELAYS.length)) {
      assertEquals(blockSize, session.info().bufferSamples());
      assertTrue(session.info().sampleLocked());
      for (int run = 0; run < 20; run++) {
        Capture capture =
            DriversRig.cleanCapture(session, DriversRig.clicks(1 + DELAYS.length, 0.1));
        Signal reference = capture.returns().get(0);
        for (int i = 0; i < DELAYS.length; i++) {
          String where = "run " + run + ", block " + blockSize;
          Signal heard = capture.returns().get(1 + i);
          assertEquals(DELAYS[i], Peak.of(heard).frame() - Peak.of(reference).frame(), where);
          double gain = Peak.of(heard).value() / Peak.of(reference).value();
          assertEquals(INVERTED_12_DB_DOWN, gain, 1e-6, where);
        }
      }
    }
  }

  private static DelayLine[] lines() {
    DelayLine[] lines = new DelayLine[1 + DELAYS.length];
    lines[0] = DelayLine.of(0);
    for (int i = 0; i < DELAYS.length; i++) {
      lines[i + 1] = DelayLine.of(DELAYS[i]).withGain(INVERTED_12_DB_DOWN);
    }
    return lines;
  }

  /** One client plays and records, so the loop through another client takes a period more. */
  @Test
  void aRigIsLateByItsOwnDelayAndOnePeriodAtEachOpening() throws Exception {
    Signal click = DriversRig.clicks(1, 0.1).sends().get(0);
    try (DriversRig rig = DriversRig.start(Cycles.STRETCH, 128, DelayLine.of(240))) {
      for (int opening = 0; opening < 5; opening++) {
        try (AudioSession session = rig.open(1)) {
          Signal heard =
              DriversRig.cleanCapture(session, DriversRig.clicks(1, 0.1)).returns().get(0);
          int late = Peak.of(heard).frame() - Peak.of(click).frame();
          assertEquals(240 + 128, late, "opening " + opening);
        }
      }
    }
  }

  @Test
  void channelsAreOpenedInTheOrderTheyAreAskedFor() throws Exception {
    DelayLine[] lines = {DelayLine.of(100), DelayLine.of(200), DelayLine.of(300)};
    try (DriversRig rig = DriversRig.start(Cycles.STRETCH, 128, lines);
        AudioSession session = rig.open(List.of(3, 1))) {
      Capture heard = DriversRig.cleanCapture(session, DriversRig.clicks(2, 0.1));
      int third = Peak.of(heard.returns().get(0)).frame();
      int first = Peak.of(heard.returns().get(1)).frame();
      assertEquals(200, third - first);
    }
  }

  /**
   * The largest value of a signal.
   *
   * @param frame where it is
   * @param value what it is
   */
  private record Peak(int frame, double value) {
    static Peak of(Signal signal) {
      Peak peak = new Peak(0, 0);
      for (int i = 0; i < signal.length(); i++) {
        if (Math.abs(signal.at(i)) > Math.abs(peak.value())) {
          peak = new Peak(i, signal.at(i));
        }
      }
      return peak;
    }
  }
}
