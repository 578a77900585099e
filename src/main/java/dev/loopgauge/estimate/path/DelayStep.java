package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.integrity.DelaySeries;
import dev.loopgauge.estimate.integrity.LostSound;
import dev.loopgauge.estimate.integrity.PhaseJump;
import dev.loopgauge.estimate.integrity.Sides;
import dev.loopgauge.estimate.integrity.Splice;
import dev.loopgauge.estimate.reading.Loudness;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.stats.Odds;
import dev.loopgauge.stats.OneStep;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A delay that steps once within a reading, so that both sides come by one filter and two delays: a
 * block was lost or repeated there.
 *
 * <p>Where it may have stepped, the delays of short stretches say ({@link DelaySeries}). The filter
 * that the louder side alone is fitted with then makes of the other side's reference what it should
 * have been: how much later the return comes than that is the step, whatever the filter. In one
 * sweep, where each side has frequencies of its own, the instant itself must show it ({@link
 * PhaseJump}).
 *
 * @param splice where and by how much
 * @param odds the logarithm of likelihoods by which a step explains the return better than a drift
 *     does, above 0
 */
public record DelayStep(Splice splice, double odds) {
  /** How often a place is looked at in a reading with one delay, at most: as often as a drift. */
  static final double FALSE_ALARMS = 1.0 / 31_000;

  /** How far from the delay the other side is looked for, in seconds. */
  private static final double FURTHEST_SECONDS = 0.1;

  /** Whether a drift is beyond doubt a worse explanation. */
  public boolean isNoDrift() {
    return odds > Odds.BEYOND_DOUBT;
  }

  /** The step in one of the readings behind a fit, if there is one. */
  public static Optional<DelayStep> of(Spectra spectra, Fit fit) {
    List<LostSound> heard = fit.residualTests().lostSound();
    for (int i = 0; i < heard.size(); i++) {
      Search search = new Search(spectra.readings().get(i), fit.measured(), spectra.reach());
      Optional<DelayStep> step = search.step(heard.get(i).windows());
      if (step.isPresent()) {
        return step;
      }
    }
    return Optional.empty();
  }

  /**
   * Whether the delay steps within a sweep. It need not be fitted, nor cut to what goes on at its
   * edges: before a cut, as beyond an edge, there is sound of another delay.
   */
  public static boolean isInSweep(Spectra spectra) {
    for (Reading reading : spectra.readings()) {
      if (new Search(reading, spectra.strongest(), spectra.reach()).inSweep().isPresent()) {
        return true;
      }
    }
    return false;
  }

  /**
   * A search in one reading.
   *
   * @param delay in whole samples
   * @param reach how long a filter may be, in samples
   * @param isSweep whether each side has frequencies of its own
   */
  private record Search(Reading reading, int delay, int reach, boolean isSweep) {
    Search(Reading reading, FittedArrival arrival, int reach) {
      this(
          reading,
          (int) Math.rint(arrival.lag()),
          reach,
          Splice.isShort(reading) && Splice.isSweep(reading.reference()));
    }

    /**
     * The step.
     *
     * @param windows what each window of the reading held
     */
    Optional<DelayStep> step(List<LostSound.Heard> windows) {
      if (isSweep) {
        return inSweep();
      }
      Optional<DelaySeries> near =
          Splice.isShort(reading) ? DelaySeries.of(windows) : Optional.empty();
      if (near.isEmpty()) {
        return Optional.empty();
      }
      Optional<DelayStep> step = in(near.get());
      return step.isPresent() || near.get().small() ? step : far();
    }

    private int furthest() {
      return Math.max(reach, reading.rate().samplesIn(FURTHEST_SECONDS));
    }

    /** Where the phase jumps, with the delay on both sides or another on one. */
    Optional<DelayStep> inSweep() {
      if (!isSweep) {
        return Optional.empty();
      }
      List<Sides> all = new ArrayList<>(Sides.apart(reading, delay, furthest()));
      all.add(new Sides(delay, delay));
      Optional<DelayStep> best = Optional.empty();
      for (Sides sides : all) {
        Optional<PhaseJump> jump = PhaseJump.of(reading, sides);
        if (jump.isPresent() && (best.isEmpty() || jump.get().odds() > best.get().odds)) {
          best = Optional.of(new DelayStep(splice(sides, jump.get().at()), jump.get().odds()));
        }
      }
      return best;
    }

    private Splice splice(Sides sides, int at) {
      int later = sides.after() - sides.before();
      return new Splice(
          reading.start() + at, later == 0 ? OptionalDouble.empty() : OptionalDouble.of(later));
    }

    /**
     * A step by more than the fitted filter reaches, or than a wave of the sound: where both sides'
     * filters say the same.
     */
    private Optional<DelayStep> far() {
      for (Sides sides : Sides.apart(reading, delay, furthest())) {
        int at = sides.change(reading) - delay;
        boolean within = at > 0 && at < reading.reference().length();
        if (within && Splice.sameBand(reading.reference(), at)) {
          double later = later(before(at, sides.before()), after(at, sides.before()), furthest());
          if (later != 0 && Math.abs(later - ofAfter(sides, at)) <= 1) {
            Splice splice = new Splice(reading.start() + delay + at, OptionalDouble.of(later));
            return Optional.of(new DelayStep(splice, Odds.BEYOND_DOUBT));
          }
        }
      }
      return Optional.empty();
    }

    /** How much later the sound after a cut is, by the filter that is fitted to it. */
    private double ofAfter(Sides sides, int at) {
      return -later(after(at, sides.after()), before(at, sides.after()), furthest());
    }

    private Optional<DelayStep> in(DelaySeries series) {
      Optional<OneStep> step = series.step();
      if (step.isEmpty() || !step.get().isThere(FALSE_ALARMS)) {
        return Optional.empty();
      }
      double odds = step.get().oddsAgainst(series.line());
      if (odds <= 0) {
        return Optional.empty();
      }
      int at = series.timeOf(step.get()) - reading.start();
      double later = Splice.sameBand(reading.reference(), at) ? later(at) : 0;
      Splice splice = new Splice(reading.start() + delay + at, OptionalDouble.of(later));
      // Beyond a wave the line's delays are wrong, so that a drift has yet to be tried.
      double known = series.small() ? odds : Math.min(odds, Odds.BEYOND_DOUBT);
      return later == 0 ? Optional.empty() : Optional.of(new DelayStep(splice, known));
    }

    /** By how much what follows a sample of the reference is later than what was before. */
    private double later(int at) {
      Reading before = before(at, delay);
      Reading after = after(at, delay);
      return Loudness.of(before.reference()).energy() > Loudness.of(after.reference()).energy()
          ? later(before, after, reach)
          : -later(after, before, reach);
    }

    private Reading before(int at, int late) {
      return reading.alone(0, at, late);
    }

    private Reading after(int at, int late) {
      return reading.alone(at, reading.reference().length(), late);
    }

    /**
     * By how much another side is later than the filter of a side makes it; 0 where it isn't, or by
     * less than half a sample: one that is lost or repeated moves the delay by 1.
     *
     * @param within how far it is looked for either way, in samples
     */
    private double later(Reading fitted, Reading other, int within) {
      OtherSide side = OtherSide.of(fitted, other, reach);
      double later = DelaySeries.peak(side.due(), side.heard(), within).orElse(0);
      double closer =
          (1 - side.squaredCorrelation(0)) / (1 - side.squaredCorrelation((int) Math.rint(later)));
      double odds = side.values() / 2 * Math.log(closer) - Math.log(2.0 * within + 1);
      return odds > Odds.BEYOND_DOUBT ? later : 0;
    }
  }
}
