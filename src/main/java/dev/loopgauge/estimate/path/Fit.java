package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.result.Band;
import dev.loopgauge.estimate.result.Response;
import dev.loopgauge.estimate.spectrum.CrossSpectrum;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.Packed;
import dev.loopgauge.estimate.spectrum.PeakSearch;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.signal.Decibels;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A return explained by arrivals of its reference, and what that leaves. */
public final class Fit {
  /**
   * A dozen harmonics of a hum take up to some fifty bins; an arrival in noise that stands eight
   * standard deviations out takes more than sixty, the noise in them included.
   */
  private static final double FEWEST_BINS = 60;

  /**
   * A peak of fewer standard deviations is not told by its curvature alone. One of more is: beside
   * speech the spread, which takes noise for white, came to 25 times what it was.
   */
  private static final double FAINT = 12;

  /** Arithmetic of 53 bits tells no less than this against what it is left of, as power. */
  private static final double LEAST_LEFT = Math.pow(2, -106);

  private final Spectra spectra;
  private final List<FittedArrival> arrivals;
  private final CrossSpectrum whole;
  private final CrossSpectrum cleaned;
  private final double searchedFrom;
  private final CrossSpectrum.Point peak;
  private final PathResponse response;
  private final ResidualTests residualTests;
  private final Residual residual;

  /** What is worked out when it is first asked for, and kept. */
  private Optional<double[]> passed = Optional.empty();

  private OptionalDouble noiseUncertainty = OptionalDouble.empty();
  private Optional<Deconvolved> deconvolved = Optional.empty();

  private Fit(Spectra spectra, List<FittedArrival> found, CrossSpectrum whole) {
    this.spectra = spectra;
    this.whole = whole;
    this.cleaned = spectra.cross().without(found.subList(1, found.size()), spectra.auto());
    this.searchedFrom = found.get(0).lag();
    this.peak = PeakSearch.refine(cleaned, searchedFrom);
    this.arrivals = new ArrayList<>(found);
    arrivals.set(0, spectra.arrival(peak));
    this.response = PathResponse.fit(spectra.cross(), spectra.auto(), arrivals, spectra.reach());
    this.residualTests = ResidualTests.of(spectra, response, arrivals);
    this.residual = residualTests.residual();
  }

  /**
   * Fits arrivals to a return.
   *
   * @param found the arrivals, the one to be measured first
   */
  public static Fit of(Spectra spectra, List<FittedArrival> found) {
    return new Fit(spectra, found, spectra.auto());
  }

  /**
   * The same with references that were filtered.
   *
   * @param whole the whole references' correlation with themselves
   */
  public static Fit ofFiltered(Spectra spectra, List<FittedArrival> found, CrossSpectrum whole) {
    return new Fit(spectra, found, whole);
  }

  /** The arrivals, the measured one first. */
  public List<FittedArrival> arrivals() {
    return arrivals;
  }

  /** The measured arrival. */
  public FittedArrival measured() {
    return arrivals.get(0);
  }

  /** The measured arrival's peak in the correlation from which the other arrivals were taken. */
  public CrossSpectrum.Point peak() {
    return peak;
  }

  /** The correlation without the other arrivals. */
  public CrossSpectrum cleaned() {
    return cleaned;
  }

  /** The correlation with all frequencies that the path passes counting alike. */
  public Deconvolved deconvolved() {
    if (deconvolved.isEmpty()) {
      deconvolved = Optional.of(sharpen());
    }
    return deconvolved.get();
  }

  /** What is left of the return. */
  public Residual residual() {
    return residual;
  }

  /** The filter that the path is taken for. */
  PathResponse pathResponse() {
    return response;
  }

  /**
   * What share of the energy that the path's filter explains around the measured arrival one around
   * another lag would explain, about 0 to 1.
   */
  public double shareExplainedAt(double lag) {
    FittedArrival there = spectra.arrival(cleaned.at(lag));
    PathResponse other = PathResponse.fit(cleaned, spectra.auto(), List.of(there), spectra.reach());
    return other.explained() / response.explained();
  }

  /** What the residual was tested for. */
  public ResidualTests residualTests() {
    return residualTests;
  }

  /** Whether a handful of frequencies is all that reference and return have in common. */
  public boolean isNarrow() {
    return residual.effectiveBins() < FEWEST_BINS;
  }

  /**
   * The power of the found arrival against all else in the return, in dB, as far as it can be told.
   */
  public double signalToNoiseDb() {
    double gain = measured().gain();
    double found = gain * gain * spectra.referenceEnergy();
    double ratio = found / Math.max(residual.residualEnergy(), LEAST_LEFT * found);
    return Decibels.ofPower(ratio);
  }

  /** All arrivals of the reference in the return, the measured one first. */
  public List<FittedArrival> allArrivals() {
    double deviation = Math.sqrt(residual.valueVariance()) / spectra.referenceEnergy();
    return new ArrivalSearch(spectra, deconvolved(), measured(), deviation).find();
  }

  /** The path's response along the delay axis, around all arrivals. */
  public Response response() {
    return new ResponseCurve(spectra, deconvolved(), arrivals).draw();
  }

  private Deconvolved sharpen() {
    return Deconvolved.of(spectra, passed(), residual.residualEnergy(), measured().gain());
  }

  /** The power that the path passes in each bin of the correlations. */
  public double[] passed() {
    if (passed.isEmpty()) {
      passed = Optional.of(findPassed());
    }
    return passed.get();
  }

  private double[] findPassed() {
    return Packed.powers(response.spectrum(spectra.auto().fft()));
  }

  /** The delay by octave band. */
  public List<Band> bands() {
    return new OctaveBands(cleaned, spectra.auto(), whole, residual, spectra.rate())
        .near(peak.lag());
  }

  /** Whether the measured arrival still is a peak with the other arrivals taken out. */
  public boolean isPeak() {
    return Math.abs(peak.lag() - searchedFrom) < 0.999;
  }

  /**
   * The standard uncertainty of the delay from noise alone, in samples, wider where it is known
   * from little or where the noise comes with the sound.
   */
  public double noiseUncertainty() {
    if (noiseUncertainty.isEmpty()) {
      noiseUncertainty = OptionalDouble.of(findNoiseUncertainty());
    }
    return noiseUncertainty.getAsDouble();
  }

  private double findNoiseUncertainty() {
    int bins = residual.usableBins();
    double covariation = residualTests.covariation().factor();
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

  /**
   * The measured arrival's level.
   *
   * @param least the height of the peak from which on it would be told; 0 where there is none
   */
  public NoisyLevel level(double least) {
    double variance = residualTests.covariation().factor() * residual.valueVariance();
    double value = Math.abs(peak.value());
    return NoisyLevel.of(measured().gain(), Math.sqrt(variance) / value, least / value);
  }

  /** The standard uncertainty of the delay from dispersion, in samples. */
  public double dispersion() {
    return new Dispersion(cleaned, residual, peak.lag()).standard();
  }
}
