package dev.loopgauge.estimate;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The arithmetic of one estimate: several readings of one path, taken together. */
final class Analysis {
  private final List<Reading> readings;
  private final int searchLag;
  private final BlockPlan plan;
  private final List<CrossSpectrum> crosses = new ArrayList<>();
  private final CrossSpectrum cross;
  private final CrossSpectrum auto;
  private final double[] searched;
  private final int best;
  private final CrossSpectrum.Point peak;
  private final List<Residual> residuals = new ArrayList<>();

  /** Analyses some readings of one rate. */
  Analysis(List<Reading> readings, double maxDelaySeconds) {
    this.readings = List.copyOf(readings);
    int shortBlock = ShortBlocks.lengthAt(rate());
    int reach = shortBlock / 16;
    this.searchLag = rate().samplesIn(maxDelaySeconds);
    int longest = readings.stream().mapToInt(r -> r.reference().length()).max().orElseThrow();
    this.plan = BlockPlan.of(longest, Math.max(searchLag, shortBlock) + 2 * reach);
    for (Reading reading : readings) {
      crosses.add(CrossSpectrum.of(reading.reference(), reading.ret(), plan));
    }
    this.cross = crosses.stream().reduce(CrossSpectrum::plus).orElseThrow();
    this.auto =
        readings.stream()
            .map(r -> CrossSpectrum.of(r.reference(), r.reference(), plan))
            .reduce(CrossSpectrum::plus)
            .orElseThrow();
    this.searched = cross.lagsFrom(-searchLag, 2 * searchLag + 1);
    this.best = PeakSearch.strongest(searched);
    this.peak = PeakSearch.refine(cross, best - searchLag);
    PathResponse response = PathResponse.fit(auto, cross, peak.lag(), reach);
    for (Reading reading : readings) {
      residuals.add(Residual.of(reading, plan, response));
    }
  }

  /** The readings. */
  List<Reading> readings() {
    return readings;
  }

  /** Their rate. */
  SampleRate rate() {
    return readings.get(0).rate();
  }

  /** The delay, in samples. */
  double delaySamples() {
    return peak.lag();
  }

  /** The return's factor against the reference, with its sign. */
  double gain() {
    return peak.value() / referenceEnergy();
  }

  /** How many standard deviations the peak stands above unrelated sound. */
  double significance() {
    double variance = residuals.stream().mapToDouble(Residual::unrelatedVariance).sum();
    return variance == 0 ? 0 : Math.abs(peak.value()) / Math.sqrt(variance);
  }

  /** The power of the found copy against all else in the return, in dB. */
  double signalToNoiseDb() {
    double left = residuals.stream().mapToDouble(Residual::leftEnergy).sum();
    return Decibels.ofPower(gain() * gain() * referenceEnergy() / left);
  }

  /** A lag that fits as well as the delay, as a distance from it. */
  Optional<Integer> rival() {
    return Rivals.of(auto, searched, best, valueVariance());
  }

  /** The standard uncertainty of the delay, from noise and scatter, in samples. */
  double standardUncertainty() {
    double variance = residuals.stream().mapToDouble(Residual::slopeVariance).sum();
    double ofAll = Math.sqrt(variance) / Math.abs(peak.curvature());
    return Uncertainty.ofMean(delays(), ofAll * Math.sqrt(readings.size()));
  }

  /** The delay of each reading by itself, near the common one. */
  double[] delays() {
    int near = (int) Math.rint(peak.lag());
    return crosses.stream().mapToDouble(c -> PeakSearch.refine(c, near).lag()).toArray();
  }

  private double valueVariance() {
    return residuals.stream().mapToDouble(Residual::valueVariance).sum();
  }

  private double referenceEnergy() {
    return readings.stream().mapToDouble(r -> r.reference().energy()).sum();
  }
}
