package dev.loopgauge.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.campaign.Campaign;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.TrackPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** No false point on a track: the same traps as for a single delay, for longer. */
@Tag("campaign")
class AdversarialTracksTest {
  private static final int SLICES = Campaign.fullOrSmall(10, 1);
  private static final int OF_SLICE = Campaign.fullOrSmall(30, 6);
  private static final Campaign CAMPAIGN = Campaign.named("adversarial-tracks");
  private static final double SECONDS = 5;

  private static List<TrackPoint> falsePoints(Trap trap, long seed) {
    Scene.Evening evening = trap.on(seed, SECONDS);
    Reading reading = evening.reading();
    return new Tracker(Tracker.SHORTEST_SECONDS, 0.1)
        .follow(reading.reference(), reading.ret(), share -> {}).points().stream()
            .filter(p -> evening.belies(p.delay().samples(), p.uncertaintySamples()))
            .toList();
  }

  @ParameterizedTest
  @EnumSource(Trap.class)
  void noFalsePoint(Trap trap) {
    List<String> wrong = new ArrayList<>();
    for (int slice = 0; slice < SLICES; slice++) {
      long first = (long) slice * OF_SLICE;
      List<String> figures =
          CAMPAIGN.slice(trap + " " + slice, () -> slice(trap, first)).orElse(List.of("0"));
      wrong.addAll(figures.subList(1, figures.size()));
    }
    assertEquals(List.of(), wrong);
    CAMPAIGN.assumeWhole();
  }

  /** How many tracks were followed, and the false points. */
  private static List<String> slice(Trap trap, long first) {
    return Stream.concat(
            Stream.of(String.valueOf(OF_SLICE)),
            LongStream.range(first, first + OF_SLICE)
                .parallel()
                .mapToObj(trial -> told(trap, CAMPAIGN.seed(trial)))
                .flatMap(List::stream))
        .toList();
  }

  private static List<String> told(Trap trap, long seed) {
    return falsePoints(trap, seed).stream().map(point -> "seed " + seed + ": " + point).toList();
  }

  /**
   * Evenings that once gave false points: claps taken for the click, a loop some turns later, a
   * drift seen where the music was louder in one half of a window, a return clipped to a square.
   */
  @ParameterizedTest
  @CsvSource({
    "CLAPS_AGAINST_CLICK, 10",
    "CLAPS_AGAINST_CLICK, 22",
    "LOOP, 7",
    "LOOP, 22",
    "LOOP, 38",
    "SPEECH_AMONG_MUSIC, 138",
    "SPEECH_AMONG_MUSIC, 146",
    "SPEECH_AMONG_MUSIC, 208",
    "SPEECH_AMONG_MUSIC, 218",
    "SQUARE, 3",
    "SQUARE, 4"
  })
  void noFalsePointAnyMore(Trap trap, long seed) {
    assertEquals(List.of(), falsePoints(trap, seed));
  }
}
