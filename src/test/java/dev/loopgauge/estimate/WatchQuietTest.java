package dev.loopgauge.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.campaign.Campaign;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Nothing is told of paths on which nothing happens: eight at once, through speech, music, applause
 * and silence between. In small in each build, 100 hours of a path by {@code -Pwatch-endurance}.
 */
@Tag("campaign")
class WatchQuietTest {
  private static final Campaign CAMPAIGN = Campaign.named("watch-quiet", "verify/watch");
  private static final WatchPlan PLAN = new WatchPlan(2, 1, 0.5);
  private static final int PATHS = 8;
  private static final int MINUTES = 10;
  private static final int FIRST = Campaign.first(0);
  private static final int END = Campaign.fullOrSmall(75, 1);
  private static final double SMALL = 0.2;

  /** Each fifth scene at twice the rate. */
  private static SampleRate rate(int slice) {
    return new SampleRate(slice % 5 == 4 ? 16_000 : 8_000);
  }

  private static List<PathSound> paths(double[] other, long seed) {
    return List.of(
        PathSound.late(200, 0.5).plus(PathSound.noise(1e-5, seed)),
        PathSound.late(611.37, -0.3).plus(PathSound.noise(1e-3, seed + 1)),
        PathSound.late(200, 0.5).through(PathSound.lowPass(0.4)),
        PathSound.late(97.5, 0.5).through(PathSound.room(230, 0.3, 391, -0.2)),
        PathSound.late(40.25, 0.8)
            .through(PathSound.highPass(0.2))
            .through(PathSound.lowPass(0.7))
            .plus(PathSound.noise(1e-4, seed + 2)),
        PathSound.late(333, 0.7).through(PathSound.compressor(0.05, 0.02, 0.0005)),
        PathSound.late(64, 0.5).plus(PathSound.other(other, 0.1)),
        PathSound.late(3001.8, 0.2).plus(PathSound.noise(1e-7, seed + 3)));
  }

  private static List<String> scene(int slice) {
    SampleRate rate = rate(slice);
    double seconds = 60 * MINUTES * Campaign.fullOrSmall(10, (int) (10 * SMALL)) / 10.0;
    long seed = CAMPAIGN.seed(1000L * slice);
    WatchedSound watched = new WatchedSound(rate, PLAN, PATHS);
    watched.hear(
        ShowProgramme.of(rate, seconds, seed),
        paths(ShowProgramme.of(rate, seconds, seed + 500), seed));
    watched.finish();
    int windows = 0;
    int read = 0;
    StringBuilder events = new StringBuilder();
    for (int path = 0; path < PATHS; path++) {
      windows += watched.readings(path).size();
      read += (int) watched.readings(path).stream().filter(w -> w.delay().isPresent()).count();
      for (WatchedSound.Told told : watched.told(path)) {
        events.append("path ").append(path).append(": ").append(told.event()).append("; ");
      }
    }
    return List.of(
        "" + PATHS * seconds / 3600, "" + windows, "" + read, events.isEmpty() ? "-" : "" + events);
  }

  /**
   * As loud programme ends a compressor still turns down the last of it, faint as that is. In this
   * scene of a campaign (6232b01, 10) that was told as a level of 1.3 dB.
   */
  @Test
  void aCompressorThatLetsGoSlowlyIsNoLevel() {
    SampleRate rate = rate(10);
    double[] scene = ShowProgramme.of(rate, 600, 0x6232b01a82676d1L + 10_000);
    double[] programme = Arrays.copyOf(scene, rate.samplesIn(70));
    WatchedSound watched = new WatchedSound(rate, PLAN, 1);
    watched.hear(programme, List.of(paths(programme, 0).get(5)));
    watched.finish();
    assertEquals(List.of(), watched.told(0));
  }

  @Test
  void nothingIsToldWhereNothingHappens() {
    double hours = 0;
    int windows = 0;
    int read = 0;
    List<String> told = new ArrayList<>();
    for (int slice = FIRST; slice < END; slice++) {
      int number = slice;
      Optional<List<String>> run = CAMPAIGN.slice("scene " + slice, () -> scene(number));
      if (run.isPresent()) {
        hours += Double.parseDouble(run.get().get(0));
        windows += Integer.parseInt(run.get().get(1));
        read += Integer.parseInt(run.get().get(2));
        if (!run.get().get(3).equals("-")) {
          told.add("scene " + slice + ": " + run.get().get(3));
        }
      }
    }
    System.out.printf(
        "watch, nothing happens, %s: %.2f hours of a path, %d scenes with events,"
            + " %d of %d windows read%n",
        CAMPAIGN.label(), hours, told.size(), read, windows);
    told.forEach(System.out::println);
    assertEquals(List.of(), told);
    assertTrue(read > windows / 2, read + " of " + windows);
    CAMPAIGN.assumeWhole();
  }
}
