package dev.loopgauge.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.campaign.Campaign;
import dev.loopgauge.estimate.SeededEvent.Judged;
import dev.loopgauge.estimate.SeededEvent.Kind;
import dev.loopgauge.estimate.result.WindowReading;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.stats.Slope;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * What happens to a path is told once, in time and at its size: eight paths at once, each with an
 * event of its own. In small in each build, 2,000 events by {@code -Pwatch-endurance}.
 */
@Tag("campaign")
class WatchEventsTest {
  private static final Campaign CAMPAIGN = Campaign.named("watch-events", "verify/watch");
  private static final WatchPlan PLAN = new WatchPlan(2, 1, 0.5);
  private static final int PATHS = 8;
  private static final int FIRST = Campaign.first(2);
  private static final int END = Campaign.fullOrSmall(250, 6);
  private static final double EARLIEST = 20;
  private static final double SECONDS = 44;
  private static final double DRIFT_SECONDS = 300;

  /** A step must be told from five times the window's uncertainty on. */
  private static final double STEP_UNCERTAINTIES = 5;

  /** Two windows of 2 s, up to a second until the first of them starts, and the longest delay. */
  private static final double IN_TIME = 6;

  private static SampleRate rate(int slice) {
    return new SampleRate(slice % 5 == 4 ? 16_000 : 8_000);
  }

  /** Three scenes of twenty are longer, and drift. */
  private static boolean drifts(int slice) {
    return slice % 20 < 3;
  }

  private static Kind kind(int slice, SplittableRandom random) {
    if (drifts(slice)) {
      return Kind.DRIFT;
    }
    int drawn = random.nextInt(20);
    return drawn < 9
        ? Kind.STEP
        : drawn < 13 ? Kind.LOST : drawn < 16 ? Kind.BYPASS : Kind.POLARITY;
  }

  private static double[] programme(int slice, SampleRate rate, double seconds, long seed) {
    if (drifts(slice)) {
      return ShowProgramme.of(rate, seconds, seed);
    }
    SplittableRandom random = new SplittableRandom(seed);
    return ShowProgramme.sound(slice % 3, rate, seconds, random).toArray();
  }

  /** Each event's kind and what came of it, and which were not right. */
  private static List<String> scene(int slice) {
    SampleRate rate = rate(slice);
    long seed = CAMPAIGN.seed(1000L * slice);
    SplittableRandom random = new SplittableRandom(seed);
    double[] programme = programme(slice, rate, drifts(slice) ? DRIFT_SECONDS : SECONDS, seed + 1);
    List<SeededEvent> events = new ArrayList<>();
    List<PathSound> paths = new ArrayList<>();
    for (int path = 0; path < PATHS; path++) {
      SeededEvent event = SeededEvent.of(kind(slice, random), rate, programme, EARLIEST, random);
      events.add(event);
      paths.add(event.path().plus(PathSound.noise(1e-4, seed + 10 + path)));
    }
    WatchedSound watched = new WatchedSound(rate, PLAN, PATHS);
    watched.hear(programme, paths);
    watched.finish();
    List<String> came = new ArrayList<>();
    for (int path = 0; path < PATHS; path++) {
      came.add(came(events.get(path), watched, path, programme, rate));
    }
    return came;
  }

  private static String came(
      SeededEvent event, WatchedSound watched, int path, double[] programme, SampleRate rate) {
    double uncertainty = uncertainty(watched, path);
    double latest =
        event.atSeconds() + IN_TIME + (event.kind() == Kind.LOST ? event.size() / 1000 : 0);
    if (event.kind() == Kind.DRIFT) {
      double needs = Bound.seconds(event.size(), uncertainty, rate);
      latest = readFor(2 * needs, event.atSeconds(), watched.readings(path));
    }
    boolean below =
        event.kind() == Kind.STEP && Math.abs(event.size()) < STEP_UNCERTAINTIES * uncertainty;
    Judged judged = event.judge(watched.told(path), programme, rate, latest);
    if (judged == Judged.RIGHT) {
      return event.kind() + " RIGHT";
    }
    if (judged != Judged.WRONG && (below || latest > programme.length / (double) rate.hertz())) {
      return event.kind() + " BELOW";
    }
    return "%s %s of %.2f at %.3f by %.1f: %s"
        .formatted(
            event.kind(), judged, event.size(), event.atSeconds(), latest, watched.told(path));
  }

  /** When this many seconds of sound have been read from a time on: pauses don't count. */
  private static double readFor(double seconds, double from, List<WindowReading> windows) {
    double read = -PLAN.windowSeconds();
    for (WindowReading window : windows) {
      read += window.fromSeconds() >= from && window.delay().isPresent() ? PLAN.stepSeconds() : 0;
      if (read >= seconds) {
        return window.toSeconds();
      }
    }
    return Double.POSITIVE_INFINITY;
  }

  /** The median expanded uncertainty of a path's windows, in samples. */
  private static double uncertainty(WatchedSound watched, int path) {
    double[] all =
        watched.readings(path).stream()
            .flatMap(w -> w.delay().stream())
            .mapToDouble(d -> d.point().uncertaintySamples())
            .sorted()
            .toArray();
    return all.length == 0 ? Double.POSITIVE_INFINITY : all[all.length / 2];
  }

  /** How long a drift must go on until a line through windows can tell it. */
  private static final class Bound {
    /** As {@code FalseAlarms} shares them out. */
    private static final double CHANCE = 1e-4 / 3 * 2 / 3600 / 5;

    private static final double FLOOR = 0.01;

    private Bound() {}

    static double seconds(double ppm, double uncertainty, SampleRate rate) {
      double noise = Math.hypot(uncertainty / 2, FLOOR);
      double perSecond = Math.abs(ppm) * 1e-6 * rate.hertz();
      for (int count = 8; count <= 64; count *= 2) {
        if (perSecond * PLAN.windowSeconds() * count < 0.5) {
          continue;
        }
        double spread = PLAN.windowSeconds() * Math.sqrt(count * (count * count - 1.0) / 12);
        if (new Slope(perSecond, noise / spread, noise / spread, count - 2).isThere(CHANCE)) {
          return PLAN.windowSeconds() * count;
        }
      }
      return Double.POSITIVE_INFINITY;
    }
  }

  @Test
  void eachEventIsToldOnceAtItsSize() {
    Map<Kind, Map<String, Integer>> table = new EnumMap<>(Kind.class);
    List<String> others = new ArrayList<>();
    for (int slice = FIRST; slice < END; slice++) {
      int number = slice;
      Optional<List<String>> run = CAMPAIGN.slice("scene " + slice, () -> scene(number));
      for (String came : run.orElse(List.of())) {
        String[] words = came.split(" ", 3);
        table
            .computeIfAbsent(Kind.valueOf(words[0]), k -> new TreeMap<>())
            .merge(words[1], 1, Integer::sum);
        if (words.length > 2) {
          others.add("scene " + slice + ": " + came);
        }
      }
    }
    System.out.println("watch, seeded events, " + CAMPAIGN.label() + ": " + table);
    others.forEach(System.out::println);
    int counted =
        table.values().stream()
            .flatMap(row -> row.entrySet().stream())
            .filter(e -> !e.getKey().equals("BELOW"))
            .mapToInt(Map.Entry::getValue)
            .sum();
    int wrong = table.values().stream().mapToInt(row -> row.getOrDefault("WRONG", 0)).sum();
    assertEquals(0, wrong, others::toString);
    assertTrue(others.size() <= counted / 100, others::toString);
    CAMPAIGN.assumeWhole();
  }
}
