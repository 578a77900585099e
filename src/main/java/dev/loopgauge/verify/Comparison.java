package dev.loopgauge.verify;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.estimate.result.ClockDrift;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.estimate.result.TrackPoint;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A measured loop against its budget.
 *
 * @param path the path's name
 * @param predicted the loop's delay by the chain file, at the measured rate
 * @param toleranceSamples how far off the chain file says it may be, in samples
 * @param allowSamples how much more is allowed, in samples
 * @param difference measured less predicted
 * @param verdict what follows
 * @param wholeBlocks how many of the host's blocks the difference is, where it is a whole number of
 *     them other than none
 * @param explanations the changes that would explain it, the likeliest first, or one that says that
 *     none fits; empty unless early or late
 * @param tellApart what to measure next, where more than one of them fits
 * @param towardsLimit when the listener's limit is passed, where clocks that are not locked make
 *     the path later and later
 */
public record Comparison(
    String path,
    Latency predicted,
    double toleranceSamples,
    double allowSamples,
    Latency difference,
    Verdict verdict,
    OptionalInt wholeBlocks,
    List<Explanation> explanations,
    Optional<ExtraMeasurement> tellApart,
    Optional<TowardsLimit> towardsLimit) {
  /** Devices are taken to have run for no longer than this since they last agreed, in seconds. */
  private static final double DRIFTED_SECONDS = 600;

  /** Copies the list. */
  public Comparison {
    explanations = List.copyOf(explanations);
  }

  /**
   * Compares a measurement with the loop of a path.
   *
   * <p>The measurement lies somewhere within its expanded uncertainty of the number read. It is
   * within budget when all of that interval is within tolerance and allowance of the prediction,
   * early or late when none of it is, and else undecided.
   *
   * @param allowSamples what may be missing from the chain file's own tolerances, 0 or more
   * @throws IllegalArgumentException when the allowance is negative or not a number
   */
  public static Comparison of(
      Measurement measured, Chain chain, ChainPath path, double allowSamples) {
    return of(measured, chain, path, allowSamples, KnownFacts.NONE);
  }

  /** The same, where some of the rig is known for sure: causes that it refutes are not named. */
  public static Comparison of(
      Measurement measured, Chain chain, ChainPath path, double allowSamples, KnownFacts facts) {
    return of(DelayReading.of(measured), Optional.empty(), chain, path, allowSamples, facts);
  }

  /** The same of one point of a track, in which nothing else was read. */
  public static Comparison of(TrackPoint point, Chain chain, ChainPath path, double allowSamples) {
    return of(
        new DelayReading(point.delay(), point.uncertaintySamples(), false, false),
        Optional.empty(),
        chain,
        path,
        allowSamples,
        KnownFacts.NONE);
  }

  private static Comparison of(
      DelayReading measured,
      Optional<ClockDrift> drift,
      Chain chain,
      ChainPath path,
      double allowSamples,
      KnownFacts facts) {
    if (!(allowSamples >= 0 && Double.isFinite(allowSamples))) {
      throw new IllegalArgumentException(
          "an allowance must be 0 samples or more, not " + allowSamples);
    }
    SampleRate rate = measured.delay().rate();
    PathBudget budget = ChainBudget.of(chain, path);
    Latency predicted = Latency.ofSeconds(budget.loop().seconds(), rate);
    double tolerance = budget.loopToleranceSamples() * rate.hertz() / chain.rate().hertz();
    Latency difference = measured.delay().minus(predicted);
    double limit = tolerance + allowSamples;
    Verdict verdict = verdict(measured, difference.samples(), limit);
    Comparison bare =
        new Comparison(
            path.name(),
            predicted,
            tolerance,
            allowSamples,
            difference,
            verdict,
            wholeBlocks(difference.seconds() * chain.rate().hertz(), chain.blockSize()),
            List.of(),
            Optional.empty(),
            Optional.empty());
    Comparison limited = drift.map(d -> bare.towards(measured, d, chain, path)).orElse(bare);
    return verdict == Verdict.EARLY || verdict == Verdict.LATE
        ? limited.explained(measured, drift, search(measured, chain, path, allowSamples, facts))
        : limited;
  }

  private static ExplanationSearch search(
      DelayReading measured, Chain chain, ChainPath path, double allowSamples, KnownFacts facts) {
    SampleRate rate = measured.delay().rate();
    return new ExplanationSearch(
        new ExplanationSearch.Reading(
            measured.delay(), measured.uncertaintySamples(), allowSamples),
        chain,
        path,
        facts,
        hypothesis -> hypothesis.toleranceSamples(rate));
  }

  /**
   * Compares what was found with the loop of a path. Where the clocks are not locked it also says
   * when the listener's limit is passed; a drift of the right sign that makes up the difference
   * within ten minutes takes its place among the other causes.
   *
   * @throws IllegalArgumentException as above
   */
  public static Comparison of(
      Estimate.Found found, Chain chain, ChainPath path, double allowSamples) {
    return of(found, chain, path, allowSamples, KnownFacts.NONE);
  }

  /** The same, where some of the rig is known for sure: causes that it refutes are not named. */
  public static Comparison of(
      Estimate.Found found, Chain chain, ChainPath path, double allowSamples, KnownFacts facts) {
    Measurement measured = found.measurement();
    boolean drifts =
        found.findings().stream().anyMatch(f -> f.code() == FindingCode.CLOCKS_NOT_LOCKED);
    boolean told = drifts && measured.method() != Method.UNCALIBRATED && !measured.ambiguous();
    return of(
        DelayReading.of(measured),
        measured.clockDrift().filter(d -> told),
        chain,
        path,
        allowSamples,
        facts);
  }

  private Comparison towards(DelayReading measured, ClockDrift drift, Chain chain, ChainPath path) {
    return with(
        explanations, tellApart, TowardsLimit.of(measured.delay(), drift.ppm(), chain, path));
  }

  private Comparison explained(
      DelayReading measured, Optional<ClockDrift> drift, ExplanationSearch search) {
    List<Hypothesis> fitting = search.fitting();
    List<Explanation> found =
        drift.map(d -> withDrift(search, fitting, d)).orElseGet(() -> search.explanations(fitting));
    SampleRate rate = measured.delay().rate();
    double resolved = 2 * (toleranceSamples + allowSamples + measured.uncertaintySamples());
    List<Explanation> causes =
        measured.leaks() ? List.of(Explanation.crosstalk(measured.delay())) : found;
    return with(
        causes.isEmpty() ? List.of(Explanation.none(predicted, difference)) : causes,
        measured.leaks()
            ? Optional.empty()
            : new TellingApart(fitting, rate, resolved).measurement(),
        towardsLimit);
  }

  /** A drift that makes up the difference soon stands where it belongs among the other causes. */
  private List<Explanation> withDrift(
      ExplanationSearch search, List<Hypothesis> fitting, ClockDrift drift) {
    double seconds = 1e6 * difference.seconds() / drift.ppm();
    if (!(seconds > 0 && seconds < DRIFTED_SECONDS)) {
      return search.explanations(fitting);
    }
    double reach = Math.abs(difference.samples()) * DRIFTED_SECONDS / seconds;
    return search.explanationsWithin(
        reach, fitting, Explanation.drift(predicted.plus(difference), seconds));
  }

  private Comparison with(
      List<Explanation> found, Optional<ExtraMeasurement> extra, Optional<TowardsLimit> limit) {
    return new Comparison(
        path,
        predicted,
        toleranceSamples,
        allowSamples,
        difference,
        verdict,
        wholeBlocks,
        found,
        extra,
        limit);
  }

  /**
   * The same comparison once {@link #tellApart} was measured: only the causes that give both
   * readings are left, or word that none does.
   *
   * @param again the same loop with the host at the block size that was asked for
   * @throws java.util.NoSuchElementException when no block size tells the causes apart
   */
  public Comparison toldApart(Measurement again) {
    ExtraMeasurement asked = tellApart.orElseThrow();
    double limit = toleranceSamples + allowSamples + again.uncertaintySamples();
    List<Explanation> changes = explanations.stream().filter(Explanation::fits).toList();
    List<Explanation> left = new ArrayList<>();
    List<ExtraMeasurement.Outcome> outcomes = new ArrayList<>();
    for (int i = 0; i < asked.outcomes().size(); i++) {
      ExtraMeasurement.Outcome outcome = asked.outcomes().get(i);
      if (Math.abs(again.delay().samples() - outcome.predictedSamples()) <= limit) {
        left.add(changes.get(i));
        outcomes.add(outcome);
      }
    }
    double least = left.stream().mapToDouble(Explanation::cost).min().orElse(0);
    return with(
        left.isEmpty()
            ? withoutChange()
            : left.stream().map(e -> e.costing(e.cost() - least)).toList(),
        Optional.of(asked.made(again.delay().samples(), outcomes)),
        towardsLimit);
  }

  /** The drift, where it is among the explanations, or word that no change fits. */
  private List<Explanation> withoutChange() {
    List<Explanation> drift =
        explanations.stream().filter(e -> e.cause().equals(Explanation.DRIFT)).toList();
    return drift.isEmpty() ? List.of(Explanation.none(predicted, difference)) : drift;
  }

  private static Verdict verdict(DelayReading measured, double difference, double limit) {
    double uncertainty = measured.uncertaintySamples();
    if (measured.open()) {
      return Verdict.UNDECIDED;
    }
    if (Math.abs(difference) + uncertainty <= limit) {
      return Verdict.WITHIN;
    }
    if (Math.abs(difference) - uncertainty > limit) {
      return difference > 0 ? Verdict.LATE : Verdict.EARLY;
    }
    return Verdict.UNDECIDED;
  }

  private static OptionalInt wholeBlocks(double difference, int blockSize) {
    long blocks = Math.round(difference / blockSize);
    boolean whole = blocks != 0 && Math.abs(difference - (double) blocks * blockSize) <= 0.5;
    return whole ? OptionalInt.of(Math.toIntExact(blocks)) : OptionalInt.empty();
  }
}
