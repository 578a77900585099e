package dev.loopgauge.verify.verdict;

import dev.loopgauge.chain.Expectation;
import dev.loopgauge.chain.ExpectedLevel;
import dev.loopgauge.estimate.result.Band;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.verify.PlainNumber;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Judges how loud a return is, over all and octave by octave.
 *
 * @param moves that the level moves while it plays, where it does
 */
record LevelJudge(Measurement measured, Optional<Finding> moves) {
  /** The level against the expected one. A level that moves is neither right nor wrong. */
  AspectVerdict level(Optional<Expectation> expected) {
    String heard = "the level is " + PlainNumber.of(measured.levelDb(), 1) + " dB";
    Optional<ExpectedLevel> level =
        expected.isPresent() ? expected.get().level() : Optional.empty();
    if (level.isEmpty()) {
      return AspectVerdict.notJudged(Aspect.LEVEL, heard);
    }
    String text =
        String.format(
            Locale.ROOT,
            "%s, expected %s ± %s dB",
            heard,
            PlainNumber.of(level.get().levelDb(), 1),
            PlainNumber.of(level.get().toleranceDb(), 1));
    AspectVerdict verdict =
        AspectVerdict.measured(
            Aspect.LEVEL,
            measured.levelDb() - level.get().levelDb(),
            measured.levelUncertaintyDb(),
            level.get().toleranceDb(),
            text);
    return verdict.judgement() == Judgement.GOOD && moves.isPresent()
        ? AspectVerdict.undecided(Aspect.LEVEL, moves.get().text())
        : verdict;
  }

  /** Each octave's level against the mean of all octaves that can be told. */
  AspectVerdict response(Optional<Expectation> expected) {
    OptionalDouble tolerance =
        expected.isPresent() ? expected.get().responseToleranceDb() : OptionalDouble.empty();
    if (tolerance.isEmpty()) {
      return AspectVerdict.notJudged(Aspect.RESPONSE, "no response is expected");
    }
    List<Band> bands = measured.bands();
    if (bands.size() < 2) {
      return AspectVerdict.undecided(Aspect.RESPONSE, "fewer than two octaves can be told");
    }
    double mean = bands.stream().mapToDouble(Band::levelDb).average().orElseThrow();
    Band worst =
        bands.stream().max(Comparator.comparingDouble(b -> surelyOff(b, mean))).orElseThrow();
    return AspectVerdict.measured(
        Aspect.RESPONSE,
        worst.levelDb() - mean,
        worst.levelUncertaintyDb(),
        tolerance.getAsDouble(),
        told(worst, mean, tolerance.getAsDouble()));
  }

  private static double surelyOff(Band band, double mean) {
    return Math.abs(band.levelDb() - mean) - band.levelUncertaintyDb();
  }

  private static String told(Band band, double mean, double tolerance) {
    double off = band.levelDb() - mean;
    return String.format(
        Locale.ROOT,
        "%s is %s dB %s the mean of all octaves, %s dB are allowed",
        hertz(band.centreHz()),
        PlainNumber.of(Math.abs(off), 1),
        off < 0 ? "below" : "above",
        PlainNumber.of(tolerance, 1));
  }

  private static String hertz(double hertz) {
    return hertz < 1000
        ? PlainNumber.of(hertz, 1) + " Hz"
        : PlainNumber.of(hertz / 1000, 1) + " kHz";
  }
}
