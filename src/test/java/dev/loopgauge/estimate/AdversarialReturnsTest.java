package dev.loopgauge.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.campaign.Campaign;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Measurement;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * No false number, unless it is marked as one of several possible ones: none where the return holds
 * nothing of the reference, none that is off by more than it says. The profile {@code conformance}
 * tries 100,000 returns. A table goes to target/adversarial.md.
 */
@Tag("campaign")
public class AdversarialReturnsTest {
  private static final int SLICES = Campaign.fullOrSmall(10, 1);
  private static final int OF_SLICE = Campaign.fullOrSmall(560, 30);
  private static final Campaign CAMPAIGN = Campaign.named("adversarial-returns");
  private static final Path TABLE = Path.of("target", "adversarial.md");
  private static final DelayEstimator ESTIMATOR = new DelayEstimator(0.1);

  /** Slices first, traps then: a run that ends in time has seen something of each trap. */
  @BeforeAll
  static void run() throws IOException {
    for (int slice = 0; slice < SLICES; slice++) {
      for (Trap trap : Trap.values()) {
        slice(trap, slice);
      }
    }
    Files.createDirectories(TABLE.getParent());
    Files.writeString(
        TABLE,
        "Seeds: "
            + CAMPAIGN.label()
            + "\n\n| trap | returns | measured | false numbers |\n|---|---|---|---|\n");
  }

  @ParameterizedTest
  @EnumSource(Trap.class)
  void noFalseNumber(Trap trap) throws IOException {
    int tried = 0;
    int measured = 0;
    List<String> wrong = new ArrayList<>();
    for (int slice = 0; slice < SLICES; slice++) {
      Optional<List<String>> run = slice(trap, slice);
      List<String> figures = run.orElse(List.of("0"));
      tried += run.isPresent() ? OF_SLICE : 0;
      measured += Integer.parseInt(figures.get(0));
      wrong.addAll(figures.subList(1, figures.size()));
    }
    String share = wrong.size() + " of " + tried;
    Files.writeString(
        TABLE,
        "| %s | %d | %d | %d |%n".formatted(trap, tried, measured, wrong.size()),
        StandardOpenOption.APPEND);
    assertEquals(List.of(), wrong, share);
    CAMPAIGN.assumeWhole();
  }

  private static Optional<List<String>> slice(Trap trap, int slice) {
    return CAMPAIGN.slice(trap + " " + slice, () -> tried(trap, (long) slice * OF_SLICE));
  }

  /** How many returns give a number, and those that give a false one. */
  private static List<String> tried(Trap trap, long first) {
    List<Caught> measured =
        LongStream.range(first, first + OF_SLICE)
            .parallel()
            .mapToObj(trial -> caught(trap, CAMPAIGN.seed(trial)))
            .flatMap(Optional::stream)
            .toList();
    List<String> figures = new ArrayList<>(List.of(String.valueOf(measured.size())));
    measured.forEach(one -> one.wrong().ifPresent(figures::add));
    return figures;
  }

  /**
   * Evenings out of thousands on which one clap looked enough like the click to be taken for it.
   */
  @ParameterizedTest
  @ValueSource(longs = {580, 840, 999, 1165, 1359, 2672, 3570, 4146, 4744, 5384})
  void oneClapAmongOthersIsNoClick(long seed) {
    assertEquals(Optional.empty(), falseNumber(Trap.CLAPS_AGAINST_CLICK, seed));
  }

  /** Loops whose cut ends once passed for arrivals that aren't there, and moved the delay. */
  @ParameterizedTest
  @ValueSource(longs = {540, 906, 1323, 1371, 1966, 2689, 3067, 3138, 4236, 4266, 4716, 5288, 5305})
  void theEndOfALoopIsNoCopy(long seed) {
    assertEquals(Optional.empty(), falseNumber(Trap.LOOP, seed));
  }

  /** Other music in the same key, of which the chords that meet once looked enough alike. */
  @ParameterizedTest
  @ValueSource(longs = {1200, 2821})
  void otherMusicInTheSameKeyIsNoCopy(long seed) {
    assertEquals(Optional.empty(), falseNumber(Trap.OTHER_MUSIC, seed));
  }

  /** Music that plays louder just when the speech does: the delay is less sure than it looks. */
  @ParameterizedTest
  @ValueSource(longs = {1847, 2535, 3619})
  void musicThatMeetsTheSpeechWidensTheUncertainty(long seed) {
    assertEquals(Optional.empty(), falseNumber(Trap.SPEECH_AMONG_MUSIC, seed));
  }

  /** Speech backwards of which one vowel is far louder than all else, and meets itself. */
  @Test
  void oneLoudVowelBackwardsIsNoCopy() {
    assertEquals(Optional.empty(), falseNumber(Trap.REVERSED, 1483));
  }

  /** Music in which two halves of the speech seem to meet beyond its end. */
  @Test
  void nothingTearsBeyondTheReference() {
    assertEquals(Optional.empty(), falseNumber(Trap.SPEECH_AMONG_MUSIC, 1851));
  }

  /** A number that was given, and what is wrong with it if anything. */
  private record Caught(Optional<String> wrong) {}

  public static Optional<String> falseNumber(Trap trap, long seed) {
    return caught(trap, seed).flatMap(Caught::wrong);
  }

  private static Optional<Caught> caught(Trap trap, long seed) {
    Scene.Evening evening = trap.on(seed);
    return ESTIMATOR.estimate(List.of(evening.reading())) instanceof Estimate.Found found
            && !found.measurement().ambiguous()
        ? Optional.of(new Caught(wrong(trap + ", seed " + seed, found.measurement(), evening)))
        : Optional.empty();
  }

  private static Optional<String> wrong(String name, Measurement m, Scene.Evening evening) {
    return evening.belies(m.delay().samples(), m.uncertaintySamples())
        ? Optional.of(
            "%s: %s +- %s, but it is %s"
                .formatted(name, m.delay().samples(), m.uncertaintySamples(), evening.delay()))
        : Optional.empty();
  }
}
