package dev.loopgauge.verify.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.result.ChangeTime;
import dev.loopgauge.verify.watch.WatchEvent.Phase;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PathWatchTest {
  private static final double JITTER = 0.005;
  private static final int TRIALS = 200;

  private final SplittableRandom random = new SplittableRandom(20_261_129);

  private Windows steady(Windows windows, int count, double samples) {
    for (int i = 0; i < count; i++) {
      windows.read(samples + JITTER * random.nextGaussian(), 0.02, -6, false);
    }
    return windows;
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, -1, 64, 256, -192})
  void tellsAStepOnceAndItsEndOnce(double size) {
    Windows windows = new Windows();
    steady(windows, 20, 595);
    steady(windows, 20, 595 + size);
    steady(windows, 20, 595);
    assertEquals(2, windows.events().size(), windows.events()::toString);
    WatchEvent.Step there = assertInstanceOf(WatchEvent.Step.class, windows.events().get(0));
    WatchEvent.Step back = assertInstanceOf(WatchEvent.Step.class, windows.events().get(1));
    assertEquals(Phase.STARTS, there.phase());
    assertEquals(size, there.change().samples(), there.uncertaintySamples());
    assertEquals(20.5, there.atSeconds(), Windows.LENGTH / 2);
    assertEquals(Phase.ENDS, back.phase());
    assertEquals(-size, back.change().samples(), back.uncertaintySamples());
    assertFalse(windows.status().moved());
  }

  @Test
  void tellsAStepWithinTwoWindowsOfSoundAfterIt() {
    Windows windows = new Windows();
    steady(windows, 20, 595);
    steady(windows, 3, 659);
    assertEquals(1, windows.events().size(), windows.events()::toString);
  }

  /** A window that holds both delays may read neither: then the ones after it date the step. */
  @Test
  void datesAStepByTheDelayAfterIt() {
    double step = 20.3;
    Windows windows =
        new Windows(
            (from, to, before, after) ->
                Optional.of(
                    Math.abs(after - 659) < 1 && from <= step && to >= step
                        ? new ChangeTime(step, 0.01)
                        : new ChangeTime(from, 0.01)));
    steady(windows, 20, 595);
    windows.read(1, 594);
    steady(windows, 4, 659);
    assertEquals(1, windows.events().size(), windows.events()::toString);
    WatchEvent.Step told = assertInstanceOf(WatchEvent.Step.class, windows.events().get(0));
    assertEquals(step, told.atSeconds(), 0.01);
  }

  /** Half a sample is no step of anything digital; just beyond it may be one. */
  @ParameterizedTest
  @ValueSource(doubles = {0.4, 0.6})
  void aStepIsHalfASampleOrMore(double size) {
    Windows windows = new Windows();
    steady(windows, 30, 595);
    steady(windows, 30, 595 + size);
    assertEquals(size > 0.5 ? 1 : 0, windows.events().size(), windows.events()::toString);
  }

  @Test
  void takesOneOddWindowForNothing() {
    Windows windows = new Windows();
    steady(windows, 20, 595);
    windows.read(1, 700);
    steady(windows, 20, 595);
    assertEquals(List.of(), windows.events());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.5, -2, 20, 100})
  void tellsADriftAndThatItIsOver(double ppm) {
    Windows windows = new Windows();
    steady(windows, 40, 595);
    double perSecond = ppm * 0.048;
    for (int i = 1; i <= 60; i++) {
      steady(windows, 1, 595 + perSecond * i);
    }
    steady(windows, 60, 595 + perSecond * 60);
    assertEquals(2, windows.events().size(), windows.events()::toString);
    WatchEvent.Drift starts = assertInstanceOf(WatchEvent.Drift.class, windows.events().get(0));
    assertEquals(ppm, starts.drift().ppm(), 1.5 * starts.drift().uncertaintyPpm());
    assertEquals(41, starts.atSeconds(), 2);
    WatchEvent.Drift ends = assertInstanceOf(WatchEvent.Drift.class, windows.events().get(1));
    assertEquals(Phase.ENDS, ends.phase());
  }

  /**
   * A filter moves the delay with the programme by a part of a sample: that slides, and is none.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.4, 1.2})
  void aDriftMovesTheDelayByHalfASampleOrMore(double samples) {
    Windows windows = new Windows();
    steady(windows, 40, 595);
    for (int i = 1; i <= 40; i++) {
      steady(windows, 1, 595 + samples * i / 40);
    }
    steady(windows, 40, 595 + samples);
    boolean told = windows.events().stream().anyMatch(WatchEvent.Drift.class::isInstance);
    assertEquals(samples > 0.5, told, windows.events()::toString);
  }

  /** Nor is it one where windows that are so uncertain may lie as far apart. */
  @ParameterizedTest
  @ValueSource(doubles = {0.9, 2})
  void aDriftMovesTheDelayBeyondWhatIsUncertain(double samples) {
    Windows windows = new Windows();
    for (int i = 0; i < 240; i++) {
      double slid = samples * Math.max(0, Math.min(1, (i - 40) / 130.0));
      windows.read(595 + slid + JITTER * random.nextGaussian(), 0.4, -6, false);
    }
    boolean told = windows.events().stream().anyMatch(WatchEvent.Drift.class::isInstance);
    assertEquals(samples > 0.5 + 0.4 * Math.sqrt(2), told, windows.events()::toString);
  }

  @Test
  void tellsAStepOnADrift() {
    Windows windows = new Windows();
    for (int i = 0; i < 80; i++) {
      steady(windows, 1, 595 + 0.96 * i + (i < 50 ? 0 : 64));
    }
    assertEquals(2, windows.events().size(), windows.events()::toString);
    WatchEvent.Step step = assertInstanceOf(WatchEvent.Step.class, windows.events().get(1));
    assertEquals(64, step.change().samples(), 0.1);
  }

  @Test
  void tellsTwoGroupsOnce() {
    Windows windows = new Windows();
    steady(windows, 20, 595);
    for (int i = 0; i < 8; i++) {
      steady(windows, 1, 659);
      steady(windows, 3, 595);
    }
    steady(windows, 60, 595);
    assertEquals(2, windows.events().size(), windows.events()::toString);
    WatchEvent.Groups groups = assertInstanceOf(WatchEvent.Groups.class, windows.events().get(0));
    assertEquals(659, groups.other().samples(), 0.1);
    assertEquals(Phase.ENDS, windows.events().get(1).phase());
  }

  @Test
  void tellsPolarityOnceTwoWindowsAgree() {
    Windows windows = new Windows();
    windows.read(10, 595);
    windows.read(595, 0.02, -6, true).read(1, 595);
    assertEquals(List.of(), windows.events());
    windows.read(595, 0.02, -6, true).read(595, 0.02, -6, true).read(595, 0.02, -6, true);
    WatchEvent.Polarity turned =
        assertInstanceOf(WatchEvent.Polarity.class, windows.events().get(0));
    assertTrue(turned.inverted());
    assertEquals(1, windows.events().size());
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.8, -1.3, 6})
  void tellsLevelsBeyondOneDecibel(double change) {
    Windows windows = new Windows();
    windows.read(20, 595);
    for (int i = 0; i < 20; i++) {
      windows.read(595, 0.02, -6 + change + 0.01 * random.nextGaussian(), false);
    }
    assertEquals(Math.abs(change) > 1 ? 1 : 0, windows.events().size(), windows.events()::toString);
    if (Math.abs(change) > 1) {
      WatchEvent.Level level = assertInstanceOf(WatchEvent.Level.class, windows.events().get(0));
      assertEquals(change, level.changeDb(), 0.05);
    }
  }

  @Test
  void tellsAGapOnceSoundIsBackAndOnceOnly() {
    Windows windows = new Windows();
    windows.read(10, 595);
    windows.readWithGap(595, 11.5, 20).readWithGap(595, 11.504, 20);
    assertEquals(List.of(), windows.events());
    windows.read(5, 595);
    assertEquals(2, windows.events().size(), windows.events()::toString);
    WatchEvent.LostSound lost =
        assertInstanceOf(WatchEvent.LostSound.class, windows.events().get(0));
    assertEquals(11.5, lost.atSeconds(), 0.005);
    assertEquals(20, lost.ms().orElseThrow(), 1e-9);
  }

  @Test
  void tellsAReturnThatFellSilentAsOneLoss() {
    Windows windows = new Windows();
    windows.read(10, 595);
    windows.readWithout(595, 1.5, 2);
    for (int i = 0; i < 6; i++) {
      windows.nothing(-20, -80, 1, 2);
    }
    assertEquals(PathStatus.State.LOST_SOUND, windows.status().state());
    assertEquals(11, windows.status().last().orElseThrow().point().atSeconds(), 1e-9);
    windows.read(5, 595);
    assertEquals(2, windows.events().size(), windows.events()::toString);
    assertEquals(11.5, windows.events().get(0).atSeconds(), 1e-9);
    assertEquals(18, windows.events().get(1).atSeconds(), 1e-9);
    WatchEvent.LostSound over =
        assertInstanceOf(WatchEvent.LostSound.class, windows.events().get(1));
    assertEquals(6500, over.ms().orElseThrow(), 1e-6);
  }

  /** However long a loss is, and whatever gaps windows find within it, it is one. */
  @ParameterizedTest
  @ValueSource(doubles = {0.12, 0.5, 0.9})
  void tellsALossWithinASecondOnce(double seconds) {
    Windows windows = new Windows();
    windows.read(10, 595);
    windows.readWithout(595, 1.05, 1.05 + seconds);
    windows.readWithGap(595, 11.1, 30);
    windows.read(5, 595);
    assertEquals(2, windows.events().size(), windows.events()::toString);
    WatchEvent.LostSound lost =
        assertInstanceOf(WatchEvent.LostSound.class, windows.events().get(0));
    assertEquals(11.05, lost.atSeconds(), 1e-9);
    assertEquals(1000 * seconds, lost.ms().orElseThrow(), 1e-6);
  }

  @Test
  void leavesLessThanATenthOfASecondToGaps() {
    Windows windows = new Windows();
    windows.read(10, 595);
    windows.readWithout(595, 1.05, 1.14);
    windows.read(5, 595);
    assertEquals(List.of(), windows.events());
  }

  /** A pause of the programme is no loss, and doesn't end one. */
  @Test
  void aPauseIsNoLossAndEndsNone() {
    Windows windows = new Windows();
    windows.read(10, 595);
    for (int i = 0; i < 6; i++) {
      windows.nothing(-130, -80);
    }
    windows.read(5, 595);
    assertEquals(List.of(), windows.events());
    assertEquals(PathStatus.State.READ, windows.status().state());
    for (int i = 0; i < 3; i++) {
      windows.nothing(-20, -80, 1, 2);
    }
    for (int i = 0; i < 6; i++) {
      windows.nothing(-130, -80);
    }
    assertEquals(1, windows.events().size(), windows.events()::toString);
    assertEquals(PathStatus.State.LOST_SOUND, windows.status().state());
  }

  @Test
  void tellsAReferenceThatDiedFromAPause() {
    Windows windows = new Windows();
    windows.read(10, 595);
    for (int i = 0; i < 6; i++) {
      windows.nothing(-140, -20);
    }
    assertEquals(PathStatus.State.NO_REFERENCE, windows.status().state());
    windows.read(3, 595);
    assertEquals(2, windows.events().size(), windows.events()::toString);
    assertInstanceOf(WatchEvent.Reference.class, windows.events().get(0));
    assertEquals(10, windows.events().get(0).atSeconds(), 1e-9);
  }

  /**
   * Other sound that was there before goes on through a pause; what is 6 dB louder is programme.
   */
  @ParameterizedTest
  @ValueSource(doubles = {-20.5, -15, -13})
  void takesOtherSoundForNoDeadReference(double dbfs) {
    Windows windows = new Windows();
    for (int i = 0; i < 20; i++) {
      windows.readBeside(i < 10 ? -20 : -30, i < 10 ? 1 : 0.01);
    }
    for (int i = 0; i < 6; i++) {
      windows.nothing(-140, dbfs);
    }
    assertEquals(dbfs > -14 ? 1 : 0, windows.events().size(), windows.events()::toString);
  }

  /** Other sound that begins a second before a pause leaves half a window to be told by. */
  @Test
  void takesOtherSoundThatBeginsBeforeAPauseForNoDeadReference() {
    Windows windows = new Windows();
    for (int i = 0; i < 20; i++) {
      windows.readBeside(-20, 0.01);
    }
    windows.readBeside(-19, 0.33).readBeside(-18, 0.55).nothing(-26, -19);
    for (int i = 0; i < 6; i++) {
      windows.nothing(-140, -19);
    }
    assertEquals(List.of(), windows.events());
  }

  /** What a reference that dies leaves unexplained is no other sound. */
  @Test
  void tellsAReferenceThatDiesWithinWindows() {
    Windows windows = new Windows();
    for (int i = 0; i < 20; i++) {
      windows.readBeside(-20, 0.01);
    }
    windows.readBeside(-20, 0.25).readBeside(-20, 0.75);
    for (int i = 0; i < 6; i++) {
      windows.nothing(-140, -20);
    }
    assertEquals(1, windows.events().size(), windows.events()::toString);
    assertInstanceOf(WatchEvent.Reference.class, windows.events().get(0));
  }

  /** Nor where it begins in a pause, however loud, for a minute. */
  @ParameterizedTest
  @CsvSource({"0, 6, 1", "1, 6, 0", "1, 56, 0", "1, 66, 1"})
  void takesOtherSoundThatBeginsInAPauseForNoDeadReference(int windowsOfPause, int loud, int told) {
    Windows windows = new Windows();
    for (int i = 0; i < 20; i++) {
      windows.readBeside(-20, 0.01);
    }
    for (int i = 0; i < windowsOfPause; i++) {
      windows.nothing(-140, -41);
    }
    for (int i = 0; i < loud; i++) {
      windows.nothing(-140, -15);
    }
    assertEquals(told, windows.events().size(), windows.events()::toString);
  }

  /**
   * Noise alone: 50 hours of a path with jitter, levels that scatter and stated noise that is
   * right. The aim leaves 0.005 events.
   */
  @Test
  @Tag("campaign")
  void staysQuietThroughNoise() {
    for (int path = 0; path < 100; path++) {
      Windows windows = new Windows();
      double jitter = Math.pow(10, -3 + 3 * random.nextDouble());
      double noise = Math.pow(10, -3 + 3 * random.nextDouble());
      double spread = Math.pow(10, -2 + 2 * random.nextDouble());
      for (int i = 0; i < 1800; i++) {
        double off = jitter * random.nextGaussian() + noise * random.nextGaussian();
        windows.read(595 + off, 2 * noise, spread * random.nextGaussian(), false);
      }
      assertEquals(List.of(), windows.events(), "jitter " + jitter + ", noise " + noise);
    }
  }

  /** Two pieces of 5 ms count where 20 ms of the return are silent too, at their length. */
  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void aShortGapCountsWhereTheReturnIsSilent(boolean silent) {
    Windows windows = new Windows();
    steady(windows, 10, 595);
    double[] lost = silent ? new double[] {1.5, 1.525} : new double[0];
    windows.readWithDoubt(595, 11.51, 10, lost).readWithDoubt(595, 11.51, 10);
    steady(windows, 10, 595);
    assertEquals(silent ? 2 : 0, windows.events().size(), windows.events()::toString);
    if (silent) {
      WatchEvent.LostSound told =
          assertInstanceOf(WatchEvent.LostSound.class, windows.events().get(0));
      assertEquals(11.5, told.atSeconds(), 1e-9);
      assertEquals(25, told.ms().orElseThrow(), 1e-6);
    }
  }

  private static Windows pause(Windows windows, int count) {
    for (int i = 0; i < count; i++) {
      windows.nothing(-140, -140);
    }
    return windows;
  }

  /** What kept to the level before a drift began makes it neither slower nor earlier. */
  @ParameterizedTest
  @ValueSource(doubles = {0.01, 0.02, 0.06})
  void tellsADriftAtItsSize(double perSecond) {
    int off = 0;
    double late = 0;
    for (int trial = 0; trial < TRIALS; trial++) {
      Windows windows = new Windows();
      for (int i = 0; i < 300; i++) {
        double slid = perSecond * Math.max(0, i - 40);
        windows.read(595 + slid + 0.02 * random.nextGaussian(), 0.04, -6, false);
      }
      WatchEvent.Drift told = assertInstanceOf(WatchEvent.Drift.class, windows.events().get(0));
      double error = Math.abs(told.drift().ppm() - perSecond / 0.048);
      off += error > 2 * told.drift().uncertaintyPpm() ? 1 : 0;
      late += Math.abs(told.atSeconds() - 41);
    }
    assertEquals(0, off);
    // A line through all values, those before too, was dated 1.2 s off of the slower two.
    assertTrue(late / TRIALS < 1.1, "on average " + late / TRIALS + " s off");
  }

  /** Faint sound hides how a drift begins: what is told of louder sound then is no step. */
  @Test
  void aDriftThatBeganInFaintSoundIsNoStep() {
    Windows windows = new Windows();
    double[] faint = {
      199.98, 199.98, 200.01, 200.02, 199.98, 199.95, 199.86, 199.64, 199.46, 199.26, 199.11, 198.90
    };
    for (int i = 0; i < 16; i++) {
      windows.read(200 + 0.02 * random.nextGaussian(), 0.06, -6, false);
    }
    for (double samples : faint) {
      windows.read(samples, 0.06, -6, false);
    }
    windows.read(198.66, 0.06, -6, false).read(198.55, 0.038, -6, false);
    for (int i = 30; i < 80; i++) {
      windows.read(200 - 0.18 * (i - 21), 0.009, -6, false);
    }
    assertEquals(1, windows.events().size(), windows.events()::toString);
    assertInstanceOf(WatchEvent.Drift.class, windows.events().get(0));
  }

  /** Clocks that part as the programme pauses leave a drift, not a step. */
  @Test
  void aDriftThatBeganInAPauseIsNoStep() {
    Windows windows = new Windows();
    steady(windows, 20, 595);
    pause(windows, 20);
    for (int i = 0; i < 60; i++) {
      steady(windows, 1, 595 + 0.03 * (20 + i));
    }
    assertEquals(1, windows.events().size(), windows.events()::toString);
    assertInstanceOf(WatchEvent.Drift.class, windows.events().get(0));
  }

  /** What moved in a pause may have moved at any time in it. */
  @Test
  void aStepInAPauseIsDatedToAllOfIt() {
    Windows windows = new Windows();
    steady(windows, 20, 595);
    pause(windows, 20);
    steady(windows, 20, 659);
    assertEquals(1, windows.events().size(), windows.events()::toString);
    WatchEvent.Step step = assertInstanceOf(WatchEvent.Step.class, windows.events().get(0));
    assertEquals(64, step.change().samples(), step.uncertaintySamples());
    assertTrue(step.atSeconds() - step.withinSeconds() <= 21, windows.events()::toString);
    assertTrue(step.atSeconds() + step.withinSeconds() >= 40, windows.events()::toString);
  }

  /** What little a window in it seems to hold is no sound between two losses. */
  @Test
  void aGapWithinALossIsThatLoss() {
    Windows windows = new Windows();
    steady(windows, 10, 595);
    for (int i = 0; i < 4; i++) {
      windows.nothing(-20, -80, 1, 2);
    }
    double[] none = {};
    windows.readWithDoubt(none, 595, 14.5, 10, 1, 2).readWithDoubt(none, 595, 14.5, 10, 1, 2);
    assertEquals(1, windows.events().size(), windows.events()::toString);
    steady(windows, 10, 595);
    assertEquals(2, windows.events().size(), windows.events()::toString);
    assertEquals(Phase.ENDS, windows.events().get(1).phase());
  }

  /** Sound that is lost as the watch ends is told then, however short. */
  @Test
  void tellsALossThatTheWatchEndsIn() {
    Windows windows = new Windows();
    steady(windows, 10, 595);
    windows.nothing(-20, -80, 1.5, 2);
    assertEquals(List.of(), windows.events());
    List<WatchEvent> events = windows.finish();
    assertEquals(2, events.size(), events::toString);
    assertEquals(11.5, events.get(0).atSeconds(), 1e-9);
  }
}
