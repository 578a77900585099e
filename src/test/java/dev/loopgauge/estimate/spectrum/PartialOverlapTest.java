package dev.loopgauge.estimate.spectrum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.reading.Loudness;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.reading.Window;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class PartialOverlapTest {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final int LENGTH = 48_000;
  private static final int MARGIN = 1000;
  private static final Signal EVENING = noise(11 * LENGTH);
  private static final Signal SHOW = EVENING.slice(LENGTH, 11 * LENGTH);

  private static Signal noise(int length) {
    SplittableRandom random = new SplittableRandom(9);
    double[] samples = new double[length];
    for (int i = 0; i < length; i++) {
      samples[i] = random.nextGaussian();
    }
    return Signal.of(RATE, samples);
  }

  /** A part of the recorded show, cut; both recordings run from its first sample to its last. */
  private static PartialOverlap.Cut cut(int from, int delay) {
    Signal late = EVENING.slice(LENGTH - delay, 11 * LENGTH - delay);
    Reading reading =
        new Reading(new Window(SHOW, from, LENGTH), new Window(late, from, LENGTH), from);
    double energy = Loudness.of(reading.reference()).energy();
    return new PartialOverlap(List.of(reading), energy).cutTo(new FittedArrival(delay, 1), MARGIN);
  }

  private static Reading only(PartialOverlap.Cut cut) {
    return cut.readings().get(0);
  }

  @Test
  void leavesAloneWhatIsKnownOnBothSides() {
    PartialOverlap.Cut cut = cut(3 * LENGTH, 400);
    assertEquals(LENGTH, only(cut).reference().length());
    assertEquals(0, cut.lost());
  }

  @Test
  void cutsTheStartOfAShowByTheMargin() {
    PartialOverlap.Cut cut = cut(0, 400);
    assertEquals(MARGIN, only(cut).start());
    assertEquals(LENGTH - MARGIN, only(cut).reference().length());
    assertEquals((double) MARGIN / LENGTH, cut.lost(), 0.002);
  }

  @Test
  void cutsTheEndOfAShowByDelayAndMargin() {
    PartialOverlap.Cut cut = cut(SHOW.length() - LENGTH, 400);
    assertEquals(SHOW.length() - LENGTH, only(cut).start());
    assertEquals(LENGTH - MARGIN - 400, only(cut).reference().length());
    assertEquals(400.0 / LENGTH, cut.missing(), 0.002);
    assertFalse(cut.leavesTooLittle());
  }

  @Test
  void tellsThatMostIsMissing() {
    assertTrue(cut(SHOW.length() - LENGTH, LENGTH / 2 + 500).leavesTooLittle());
  }
}
