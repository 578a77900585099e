package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.audioserver.NeedsAudioServer;
import dev.loopgauge.cli.Run;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The packaged program measures a rig of known delay on a real server while something happens, at a
 * random moment between its start and its end. Whatever that is, it ends by itself, with an exit
 * code that is documented, without a stack trace, and a number that it prints is right.
 *
 * <p>{@code loopgauge.faults} trials are done, {@value #FEW} in each build; {@code mvn -B verify
 * -Pfaults} does 300 and, run again, goes on from the log in {@code loopgauge.faults.log}.
 */
@NeedsAudioServer
class RandomFaultsIT {
  private static final int FEW = 3;
  private static final int TRIALS = Integer.getInteger("loopgauge.faults", FEW);
  private static final Path FOLDER =
      Path.of(System.getProperty("loopgauge.faults.log", "target/faults"));

  private static final Set<Integer> SIGNALLED = Set.of(129, 130, 143);

  @TempDir Path folder;

  @Test
  void whateverHappensNothingHangsAndNoNumberIsWrong() throws Exception {
    StrikeLog log = StrikeLog.in(FOLDER);
    SplittableRandom chance = new SplittableRandom(log.seed() + log.done());
    try (StruckRig rig = new StruckRig(folder, chance)) {
      rig.putUp();
      long begun = System.nanoTime();
      outcome(rig.end(rig.measure(0), 0), rig.delay());
      long nanos = System.nanoTime() - begun;
      int first = log.done();
      for (int number = first; number < first + TRIALS; number++) {
        trial(rig, number, nanos, log);
      }
    }
    Files.writeString(FOLDER.resolve("table.md"), log.table());
  }

  private static void trial(StruckRig rig, int number, long nanos, StrikeLog log) throws Exception {
    SplittableRandom random = new SplittableRandom(log.seed() ^ number * 0x9E3779B97F4A7C15L);
    List<Strike> strikes = List.of(Strike.values());
    Strike strike = strikes.get(random.nextInt(strikes.size()));
    rig.putUp();
    int delay = rig.delay();
    List<Process> measuring = new ArrayList<>(List.of(rig.measure(0)));
    long moment = random.nextLong(nanos);
    measuring.get(0).waitFor(moment, TimeUnit.NANOSECONDS);
    if (strike == Strike.SECOND_LOOPGAUGE) {
      measuring.add(rig.measure(1));
    }
    strike.on(rig, measuring.get(0), random);
    long struck = System.nanoTime();
    for (int i = 0; i < measuring.size(); i++) {
      String trial = "trial " + number + " of commit " + log.commit() + ": " + strike;
      try {
        String outcome = outcome(rig.end(measuring.get(i), i), delay);
        long after = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - struck);
        if (i == 0) {
          log.add(number, strike, after, outcome);
        }
      } catch (AssertionError e) {
        log.add(number, strike, TimeUnit.NANOSECONDS.toMillis(moment), "BAD");
        throw new AssertionError(trial + " " + TimeUnit.NANOSECONDS.toMillis(moment) + " ms", e);
      }
    }
  }

  /** One word for how it ended; fails where it may not end so. */
  private static String outcome(Run run, int delay) {
    String said = "exit " + run.exitCode() + "\n" + run.out() + run.err();
    assertFalse(run.err().contains("\tat ") || run.err().contains("Exception"), said);
    if (SIGNALLED.contains(run.exitCode()) && run.out().isEmpty()) {
      return "ended-by-signal";
    }
    Map<String, Object> document = run.json();
    Map<?, ?> measured = (Map<?, ?>) document.get("measurement");
    if (measured != null) {
      double found = ((Number) measured.get("delaySamples")).doubleValue();
      double uncertainty = ((Number) measured.get("uncertaintySamples")).doubleValue();
      assertEquals(delay, found, Math.max(uncertainty, 1e-3), said);
      assertTrue(Set.of(0, 1, 3).contains(run.exitCode()), said);
      return "right";
    }
    assertTrue(Set.of(3, 4).contains(run.exitCode()), said);
    return run.exitCode() == 3 ? "refused" : "failed";
  }
}
