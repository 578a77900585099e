package dev.loopgauge.estimate;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.stats.Median;
import dev.loopgauge.stats.Slope;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A return explained by copies of its reference, and what that leaves. */
final class Fit {
  /**
   * A dozen harmonics of a hum take up to some fifty bins; a copy in noise that stands eight
   * standard deviations out takes more than sixty, the noise in them included.
   */
  private static final double FEWEST_BINS = 60;

  /** How many times the median of all lags a deconvolved correlation stands out by. */
  private static final double STANDS_OUT = 24;

  /**
   * Weight of the coherence statistic relative to the correlation statistic: notes that are held
   * keep their phase from block to block, and unrelated music in one key came to 8 of them once in
   * 5600 evenings.
   */
  private static final double LIKENESS_COUNTS = 0.8;

  /** A peak of fewer standard deviations is not told by its curvature alone. */
  private static final double FAINT = 12;

  /**
   * How many times its mean power a path is believed to pass anywhere: where the reference holds
   * next to nothing, a fitted filter may come out as anything.
   */
  private static final double BELIEVED = 1000;

  /** Arithmetic of 53 bits tells no less than this against what it is left of, as power. */
  private static final double LEAST_LEFT = Math.pow(2, -106);

  private final Spectra spectra;
  private final List<FittedArrival> copies;
  private final CrossSpectrum whole;
  private final CrossSpectrum cleaned;
  private final double searchedFrom;
  private final CrossSpectrum.Point peak;
  private final PathResponse response;
  private final ResidualTests remainder;
  private final Residual residual;
  private final Lazy<double[]> passed = new Lazy<>(this::findPassed);
  private final Lazy<Double> significance = new Lazy<>(this::findSignificance);
  private final Lazy<Double> noiseUncertainty = new Lazy<>(this::findNoiseUncertainty);
  private final Lazy<Deconvolved> deconvolved = new Lazy<>(this::sharpen);
  private final Lazy<Optional<Splice>> splice = new Lazy<>(this::findTear);

  private Fit(Spectra spectra, List<FittedArrival> found, CrossSpectrum whole) {
    this.spectra = spectra;
    this.whole = whole;
    this.cleaned = spectra.cross().without(found.subList(1, found.size()), spectra.auto());
    this.searchedFrom = found.get(0).lag();
    this.peak = PeakSearch.refine(cleaned, searchedFrom);
    this.copies = new ArrayList<>(found);
    copies.set(0, spectra.copy(peak));
    this.response = PathResponse.fit(spectra.cross(), spectra.auto(), copies, spectra.reach());
    this.remainder = ResidualTests.of(spectra, response, copies);
    this.residual = remainder.residual();
  }

  /**
   * Fits copies to a return.
   *
   * @param found the copies, the one to be measured first
   */
  static Fit of(Spectra spectra, List<FittedArrival> found) {
    return new Fit(spectra, found, spectra.auto());
  }

  /**
   * The same with references that were filtered.
   *
   * @param whole the whole references' correlation with themselves
   */
  static Fit ofFiltered(Spectra spectra, List<FittedArrival> found, CrossSpectrum whole) {
    return new Fit(spectra, found, whole);
  }

  /** The copies, the measured one first. */
  List<FittedArrival> copies() {
    return copies;
  }

  /** The measured copy. */
  FittedArrival measured() {
    return copies.get(0);
  }

  /** What is left of the return. */
  Residual residual() {
    return residual;
  }

  /**
   * How many standard deviations the measured copy stands above unrelated sound: as it is, or with
   * all frequencies counting alike, whichever shows it better. The first serves faint returns in
   * noise, the second speech and music, whose power lies in few frequencies. Where a handful of
   * frequencies is all that is in common, as of a hum in both, the first proves nothing; where the
   * deconvolved correlation is as large elsewhere, as of other music in the same key, the second.
   */
  double significance() {
    return significance.get();
  }

  private double findSignificance() {
    double plain = isNarrow() ? 0 : plainSignificance();
    boolean enough = plain >= Detection.TRUSTED || !standsOut();
    return enough ? plain : Math.max(plain, LIKENESS_COUNTS * remainder.coherence().significance());
  }

  /**
   * The same as it is, however few frequencies it lies in. Sound that is loud when the reference is
   * gets further by chance.
   */
  double plainSignificance() {
    double variance = residual.unrelatedVariance() * remainder.covariation().factor();
    return variance == 0 ? 0 : Math.abs(peak.value()) / Math.sqrt(variance);
  }

  /** Whether a handful of frequencies is all that reference and return have in common. */
  boolean isNarrow() {
    return residual.carryingBins() < FEWEST_BINS;
  }

  /**
   * How many standard deviations a copy in few frequencies stands above unrelated sound, told by
   * how little it leaves of the return: noise in n values would be explained as well once in exp(n
   * / 2 ln(1 / left)) times (the likelihood ratio of Gaussian noise of unknown level; derived).
   * That n is the square of the plain significance, less what the fitted filter can follow.
   */
  double narrowSignificance() {
    double followed = residual.carryingBins() * 2 * spectra.reach() / residual.bins();
    double values = Math.max(0, Math.pow(plainSignificance(), 2) - followed);
    return Math.sqrt(values * Math.max(0, -Math.log(residual.unexplained())));
  }

  /** The share of the returns' energy that the measured copy is, unfiltered. */
  double share() {
    double all = spectra.readings().stream().mapToDouble(r -> Loudness.of(r.ret()).energy()).sum();
    return measured().gain() * measured().gain() * spectra.referenceEnergy() / all;
  }

  private boolean standsOut() {
    double[] lags = spectra.searched(deconvolved.get().cross());
    double here = Math.abs(lags[nearest()]);
    return here > STANDS_OUT * Median.magnitude(lags);
  }

  /**
   * The power of the found copy against all else in the return, in dB, as far as it can be told.
   */
  double signalToNoiseDb() {
    double gain = measured().gain();
    double found = gain * gain * spectra.referenceEnergy();
    double ratio = found / Math.max(residual.residualEnergy(), LEAST_LEFT * found);
    return Decibels.ofPower(ratio);
  }

  /** All copies of the reference in the return, the measured one first. */
  List<FittedArrival> allCopies() {
    double deviation = Math.sqrt(residual.valueVariance()) / spectra.referenceEnergy();
    return new ArrivalSearch(spectra, deconvolved.get(), measured(), deviation).find();
  }

  /** The path's response along the delay axis, around all copies. */
  Response response() {
    return new ResponseCurve(spectra, deconvolved.get(), copies).draw();
  }

  private Deconvolved sharpen() {
    return Deconvolved.of(spectra, passed(), residual.residualEnergy(), measured().gain());
  }

  /** The power that the path passes in each bin of the correlations. */
  double[] passed() {
    return passed.get();
  }

  private double[] findPassed() {
    return Packed.powers(response.spectrum(spectra.auto().fft()));
  }

  /** The delay by octave band. */
  List<Band> bands() {
    return new OctaveBands(cleaned, spectra.auto(), whole, residual, spectra.rate())
        .near(peak.lag());
  }

  /** A lag that fits as well as the delay. */
  Optional<AmbiguityTest.Rival> rival() {
    double[] searched = spectra.searched(cleaned);
    double[] copy = spectra.auto().weighted(believed()).lagsFrom(0, searched.length);
    return AmbiguityTest.of(copy, searched, nearest(), residual.valueVariance());
  }

  /** The power that the path passes, as far as there is a reference to tell it by. */
  private double[] believed() {
    double[] powers = passed().clone();
    double[] weights = spectra.auto().magnitudes();
    double sum = 0;
    double mean = 0;
    for (int k = 0; k < powers.length; k++) {
      sum += weights[k];
      mean += weights[k] * powers[k];
    }
    for (int k = 0; k < powers.length; k++) {
      powers[k] = Math.min(powers[k], BELIEVED * mean / sum);
    }
    return powers;
  }

  /** The same where the references are what the path passes: they tell how the copy repeats. */
  Optional<AmbiguityTest.Rival> narrowRival() {
    double[] searched = spectra.searched(cleaned);
    double[] copy = spectra.auto().lagsFrom(0, searched.length);
    return AmbiguityTest.ofNarrow(copy, searched, nearest(), residual.valueVariance());
  }

  /** The index of the searched lag nearest to the peak, which may lie just beyond the last. */
  private int nearest() {
    int index = (int) Math.rint(peak.lag()) + spectra.searchLag();
    return Math.max(0, Math.min(index, 2 * spectra.searchLag()));
  }

  /** Whether the measured copy still is a peak with the other copies taken out. */
  boolean isPeak() {
    return Math.abs(peak.lag() - searchedFrom) < 0.999;
  }

  /** The segments in which the copy is missing. */
  List<LostSound.Gap> gaps() {
    return remainder.lostSound().stream().flatMap(lost -> lost.gaps().stream()).toList();
  }

  /** Where a reading splices, if one does. */
  Optional<Splice> splice() {
    return splice.get();
  }

  private Optional<Splice> findTear() {
    for (int i = 0; i < remainder.lostSound().size(); i++) {
      Optional<Splice> splice =
          Splice.of(spectra.readings().get(i), copies, remainder.lostSound().get(i));
      if (splice.isPresent()) {
        return splice;
      }
    }
    return Optional.empty();
  }

  /** How the delay drifts within the only reading, in samples a sample, where that can be told. */
  Optional<Slope> drift() {
    return remainder.lostSound().size() == 1
        ? DriftGauge.of(remainder.lostSound().get(0))
        : Optional.empty();
  }

  /** By how much the path's level moves, in dB, if so. A handful of frequencies can't tell. */
  OptionalDouble gainModulation() {
    return isNarrow() ? OptionalDouble.empty() : GainModulation.of(remainder.lostSound());
  }

  /**
   * The standard uncertainty of the delay from noise alone, in samples, wider where it is known
   * from little or where the noise comes with the sound.
   */
  double noiseUncertainty() {
    return noiseUncertainty.get();
  }

  private double findNoiseUncertainty() {
    int bins = residual.usableBins();
    double covariation = remainder.covariation().factor();
    double fromCurvature =
        Math.sqrt(covariation * residual.slopeVariance(0, 1, bins)) / Math.abs(peak.curvature());
    double variance = covariation * residual.valueVariance();
    double spread =
        peak.value() * peak.value() < FAINT * FAINT * variance
            ? LagPosterior.spread(cleaned, peak, variance, fromCurvature)
            : 0;
    return Uncertainty.widening(residual.slopeDegrees(0, 1, bins))
        * Math.max(fromCurvature, spread);
  }

  /** The expanded uncertainty of the measured arrival's level from noise (k = 2), in dB. */
  double levelUncertaintyDb() {
    double variance = remainder.covariation().factor() * residual.valueVariance();
    return Uncertainty.levelDb(Math.sqrt(variance) / Math.abs(peak.value()));
  }

  /** The standard uncertainty of the delay from dispersion, in samples. */
  double dispersion() {
    return new Dispersion(cleaned, residual, peak.lag()).standard();
  }
}
