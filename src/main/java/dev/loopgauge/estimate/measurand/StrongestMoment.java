package dev.loopgauge.estimate.measurand;

/**
 * When a path's own response is strongest, freed of the stimulus, and how far that depends on which
 * part of the band is known: the envelope's peak of the response over the run of bands that stand
 * out of the noise.
 *
 * @param lag when, in samples
 * @param standard its standard uncertainty from noise and from what the definition leaves open
 *     (JCGM 200:2012, 2.27), in samples
 */
record StrongestMoment(double lag, double standard) {
  /** The moment of a run of bands. */
  static StrongestMoment of(BandResponse run) {
    EnvelopePeak peak = EnvelopePeak.of(run, FlatnessTest.HARMLESS * FlatnessTest.HARMLESS);
    double standard = Math.hypot(peak.standard(), moved(run, peak));
    return new StrongestMoment(run.lag() + peak.offset(), standard);
  }

  /**
   * How far it moves when an octave, or half of a run that is shorter than two, is cut off an end
   * inside the audio band.
   */
  private static double moved(BandResponse run, EnvelopePeak peak) {
    double[] omegas = run.omegas();
    double lowest = omegas[0];
    double highest = omegas[omegas.length - 1];
    double factor = Math.min(2, Math.sqrt(highest / lowest));
    int from = 0;
    while (omegas[from] < lowest * factor) {
      from++;
    }
    int to = omegas.length;
    while (omegas[to - 1] > highest / factor) {
      to--;
    }
    double low = run.startsInside() ? moved(run, peak, from, omegas.length) : 0;
    double high = run.endsInside() ? moved(run, peak, 0, to) : 0;
    return Math.max(low, high);
  }

  private static double moved(BandResponse run, EnvelopePeak peak, int from, int to) {
    return Math.abs(EnvelopePeak.of(run.part(from, to)).offset() - peak.offset());
  }
}
