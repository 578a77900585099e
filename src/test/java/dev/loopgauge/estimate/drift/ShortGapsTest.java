package dev.loopgauge.estimate.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.campaign.Campaign;
import dev.loopgauge.estimate.PathSound;
import dev.loopgauge.estimate.ShowProgramme;
import dev.loopgauge.estimate.integrity.GapSearch;
import dev.loopgauge.estimate.integrity.LostSound;
import dev.loopgauge.estimate.path.Fit;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.reading.Window;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How long the gaps are that windows of sound show in which nothing was lost: what {@link
 * WindowSound} takes for the shortest loss is more than that. The counts go to standard output.
 */
@Tag("campaign")
class ShortGapsTest {
  private static final SampleRate RATE = new SampleRate(16_000);
  private static final int MINUTES = Campaign.fullOrSmall(120, 3);
  private static final int WINDOW = RATE.samplesIn(2);
  private static final double PIECE_MS = 5;

  /** A gap counts once a second window shows it, so this leaves far less than one in an hour. */
  private static final int MOST_ONE_OF = 5000;

  private static List<PathSound> paths() {
    return List.of(
        PathSound.late(0, 0.5).through(PathSound.lowPass(0.4)),
        PathSound.late(0, 0.5).through(PathSound.room(230, 0.3, 391, -0.2)),
        PathSound.late(0, 0.5).through(PathSound.room(1230, 0.6, 2391, -0.4)),
        PathSound.late(0, 0.8).through(PathSound.highPass(0.2)).through(PathSound.lowPass(0.7)));
  }

  private static Signal back(double[] programme, PathSound path) {
    double[] back = new double[programme.length];
    for (int n = 0; n < back.length; n++) {
      back[n] = path.at(programme, n);
    }
    return Signal.of(RATE, back);
  }

  private static List<LostSound.Gap> gaps(Signal sent, Signal back, int from) {
    List<Reading> halves = halves(sent, back, from);
    Spectra spectra = Spectra.of(halves, 0.1);
    return GapSearch.of(WindowSound.whole(halves, Fit.of(spectra, List.of(spectra.strongest()))));
  }

  private static List<Reading> halves(Signal sent, Signal back, int from) {
    int half = WINDOW / 2;
    List<Reading> halves = new ArrayList<>();
    for (int at = 0; at < WINDOW; at += half) {
      halves.add(
          new Reading(new Window(sent, from + at, half), new Window(back, from + at, half), at));
    }
    return halves;
  }

  @Test
  void soundThatIsThereLacksLessThanTheShortestLoss() {
    Map<Integer, Integer> pieces = new TreeMap<>();
    int windows = 0;
    for (int minute = 0; minute < MINUTES; minute++) {
      double[] programme = ShowProgramme.of(RATE, 60, 300 + minute);
      Signal sent = Signal.of(RATE, programme);
      for (PathSound path : paths()) {
        Signal back = back(programme, path);
        for (int from = WINDOW; from + 2 * WINDOW < programme.length; from += WINDOW) {
          windows++;
          for (LostSound.Gap gap : gaps(sent, back, from)) {
            int count = (int) Math.round(1000.0 * gap.length() / RATE.hertz() / PIECE_MS);
            pieces.merge(count, 1, Integer::sum);
          }
        }
      }
    }
    System.out.println("gaps by length in pieces of 5 ms, of " + windows + " windows: " + pieces);
    int long3 =
        pieces.entrySet().stream().filter(e -> e.getKey() >= 3).mapToInt(Map.Entry::getValue).sum();
    assertTrue(long3 <= windows / MOST_ONE_OF, pieces::toString);
  }

  /** Lost sound of up to 9 ms fills two pieces at most, of 20 ms three at least. */
  @ParameterizedTest
  @CsvSource({"9, false", "20, true"})
  void tellsWhatIsLongerThanTheShortestLoss(int ms, boolean told) {
    for (int trial = 0; trial < 12; trial++) {
      double[] programme =
          ShowProgramme.sound(1, RATE, 6, new SplittableRandom(80 + trial)).toArray();
      int lost = 2 * WINDOW - RATE.samplesIn(0.5) + 7 * trial;
      PathSound path =
          PathSound.late(0, 0.5)
              .silent(lost, lost + RATE.samplesIn(ms / 1000.0))
              .plus(PathSound.noise(1e-6, trial));
      Signal back = back(programme, path);
      List<Reading> halves = halves(Signal.of(RATE, programme), back, WINDOW);
      Spectra spectra = Spectra.of(halves, 0.1);
      Fit fit = Fit.of(spectra, List.of(spectra.strongest()));
      assertEquals(told, !WindowSound.of(halves, fit, 0).gaps().isEmpty(), "trial " + trial);
    }
  }
}
