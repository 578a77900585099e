package dev.loopgauge.estimate;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.signal.ExponentialSweep;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.StimulusKind;
import dev.loopgauge.signal.filter.Designs;
import dev.loopgauge.signal.filter.Filter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/**
 * A return through a path on which something happens once, or nothing.
 *
 * @param change what happens
 * @param size how much: ppm of a drift, samples of a step (above 0 later), ms of a gap, dB of a
 *     level
 * @param stimulus what is played
 * @param signalToNoiseDb the return's mean power against the noise's
 * @param seed of all that is left to chance: the path, its delay, when it happens, the noise
 */
record OneDelayTrial(
    Change change, double size, Stimulus stimulus, double signalToNoiseDb, long seed) {
  static final SampleRate RATE = Designs.RATE;
  private static final int TAIL = 12_000;
  private static final int PAUSE = 24_000;
  private static final int TURNS = 3;
  private static final DelayEstimator ESTIMATOR = new DelayEstimator(0.2);

  enum Change {
    NOTHING,
    DRIFT,
    STEP,
    GAP,
    LEVEL
  }

  enum Stimulus {
    SWEEP,
    SWEEPS,
    MLS,
    SPEECH,
    MUSIC,
    APPLAUSE,
    DRUMS;

    private int turns() {
      return this == SWEEPS ? TURNS : 1;
    }
  }

  /** What the estimator made of it. */
  enum Outcome {
    /** A number within its uncertainty, and nothing said of any change. */
    QUIET,
    /** The change was told as what it is. */
    TOLD,
    /** Something else was told, with a number or without. */
    TOLD_OTHERWISE,
    /** No number, for another reason than a change. */
    REFUSED,
    /** A number that is no delay of the path, and nothing said. */
    WRONG
  }

  /**
   * An outcome and the codes that were told.
   *
   * @param codes of findings about changes
   */
  record Told(Outcome outcome, String codes) {}

  private static final List<FindingCode> CHANGES =
      List.of(
          FindingCode.DROPOUT,
          FindingCode.LEVEL_MOVES,
          FindingCode.CLOCKS_NOT_LOCKED,
          FindingCode.TWO_ARRIVALS,
          FindingCode.CLIPPED);

  /** Of programme of 1 to 3 s. */
  Told read() {
    return read(random -> 1 + random.nextInt(3));
  }

  /** Of programme of 1 to 30 s, as often 1 to 2 s as 15 to 30 s. */
  Told readExcerpt() {
    return read(random -> Math.pow(30, random.nextDouble()));
  }

  /** What was played, the noise, the outcome, and the codes told; refusals end in "!". */
  String line(Told told) {
    return String.join(
        "/",
        stimulus.name(),
        (int) signalToNoiseDb + " dB",
        told.outcome().name(),
        told.codes().isEmpty() ? "-" : told.codes());
  }

  /**
   * Of programme as long as is drawn.
   *
   * @param length draws it, in seconds
   */
  private Told read(ToDoubleFunction<SplittableRandom> length) {
    SplittableRandom random = new SplittableRandom(seed);
    Signal sent = sent(length.applyAsDouble(random), random);
    int delay = 100 + random.nextInt(900);
    List<Reading> readings = readings(sent, delay, random);
    Estimate estimate =
        readings.size() > 1
            ? ESTIMATOR.estimate(readings)
            : ESTIMATOR.estimate(sent, readings.get(0).ret());
    List<FindingCode> told =
        estimate.findings().stream().map(Finding::code).filter(CHANGES::contains).toList();
    String codes =
        estimate.findings().stream()
            .filter(f -> told.contains(f.code()) || f.refuses())
            .map(f -> f.code().label() + (f.refuses() ? "!" : ""))
            .distinct()
            .collect(Collectors.joining("+"));
    return new Told(outcome(estimate, told, delay), codes);
  }

  private Outcome outcome(Estimate estimate, List<FindingCode> told, int delay) {
    if (told.contains(own())) {
      return Outcome.TOLD;
    }
    if (!told.isEmpty()) {
      return Outcome.TOLD_OTHERWISE;
    }
    if (estimate instanceof Estimate.Found found) {
      return isDelay(found.measurement(), delay) ? Outcome.QUIET : Outcome.WRONG;
    }
    return Outcome.REFUSED;
  }

  private FindingCode own() {
    return switch (change) {
      case NOTHING -> FindingCode.NO_RETURN;
      case DRIFT -> FindingCode.CLOCKS_NOT_LOCKED;
      case STEP, GAP -> FindingCode.DROPOUT;
      case LEVEL -> FindingCode.LEVEL_MOVES;
    };
  }

  /** Whether a number's interval, a quarter wider, reaches a delay that the path had. */
  private boolean isDelay(Measurement measurement, int delay) {
    double pure = measurement.pure().map(p -> p.samples()).orElse(Double.NaN);
    double interval = 1.25 * measurement.pure().map(p -> p.uncertaintySamples()).orElse(0.0);
    double least = change == Change.STEP ? Math.min(0, size) : 0;
    double most = change == Change.STEP ? Math.max(0, size) : 0;
    if (change == Change.DRIFT) {
      most = size * 1e-6 * 4 * RATE.hertz();
    }
    return Double.isNaN(pure)
        || (pure + interval >= delay + least && pure - interval <= delay + most);
  }

  private Signal sent(double seconds, SplittableRandom random) {
    return switch (stimulus) {
      case SWEEP, SWEEPS -> ExponentialSweep.fullBand(1).render(RATE);
      case MLS -> StimulusKind.MLS.of(1).render(RATE);
      case SPEECH -> ShowSound.speech(RATE, seconds, random);
      case MUSIC -> ShowSound.music(RATE, seconds, random);
      case APPLAUSE -> ShowSound.applause(RATE, seconds, random);
      case DRUMS -> ShowSound.pattern(ShowSound.drumKit(RATE, random), seconds, random);
    };
  }

  private List<Reading> readings(Signal sent, int delay, SplittableRandom random) {
    int turn = sent.length() + PAUSE;
    double[] played = new double[stimulus.turns() * turn + TAIL];
    for (int i = 0; i < stimulus.turns(); i++) {
      sent.copyTo(0, played, i * turn, sent.length());
    }
    Optional<Filter> filter = filter(random);
    boolean first = random.nextBoolean();
    int within = (int) ((0.15 + 0.7 * random.nextDouble()) * sent.length());
    int at = stimulus.turns() / 2 * turn + delay + within;
    double[] through = first && filter.isPresent() ? filter.get().on(played) : played;
    double[] changed = changed(through, delay, at);
    double[] back = !first && filter.isPresent() ? filter.get().on(changed) : changed;
    addNoise(back, (double) stimulus.turns() * sent.length(), random);
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < stimulus.turns(); i++) {
      Signal whole = Signal.of(RATE, back);
      readings.add(
          new Reading(sent, whole.slice(i * turn, i * turn + sent.length() + TAIL), i * turn));
    }
    return readings;
  }

  /** Half of the paths pass all alike, the others are each of a filter. */
  private static Optional<Filter> filter(SplittableRandom random) {
    int which = random.nextInt(2 * Designs.all().size());
    return which < Designs.all().size()
        ? Optional.of(Designs.all().get(which).at(RATE))
        : Optional.empty();
  }

  private double[] changed(double[] played, int delay, int at) {
    double[] changed = new double[played.length];
    double gain = change == Change.LEVEL ? Math.pow(10, size / 20) : 1;
    double lost = change == Change.GAP ? size * RATE.hertz() / 1000 : 0;
    for (int n = 0; n < changed.length; n++) {
      boolean after = n >= at;
      double late =
          switch (change) {
            case DRIFT -> delay + size * 1e-6 * n;
            case STEP -> delay + (after ? size : 0);
            default -> delay;
          };
      boolean silent = after && n < at + lost;
      changed[n] =
          silent ? 0 : 0.5 * (after ? gain : 1) * PathSound.Between.value(played, n - late);
    }
    return changed;
  }

  private void addNoise(double[] back, double sounding, SplittableRandom random) {
    double energy = 0;
    for (double value : back) {
      energy += value * value;
    }
    double noise = Math.sqrt(energy / sounding) * Math.pow(10, -signalToNoiseDb / 20);
    for (int i = 0; i < back.length; i++) {
      back[i] += noise * random.nextGaussian();
    }
  }
}
