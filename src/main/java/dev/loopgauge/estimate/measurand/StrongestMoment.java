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
  private static final int FEWEST = 4;

  /**
   * The moment of a run of bands. Where the run ends inside the audio band, the moment may be off
   * by as much as a cut by half an octave more, or a whole one, moves it, whichever is more: some
   * filters come back after an octave. That is a rectangular part (JCGM 100:2008, 4.3.7).
   */
  static StrongestMoment of(BandResponse run) {
    EnvelopePeak peak = EnvelopePeak.of(run, FlatnessTest.HARMLESS * FlatnessTest.HARMLESS);
    double most = Math.max(moved(run, peak, Math.sqrt(2)), moved(run, peak, 2));
    double standard = Math.hypot(peak.standard(), most / Math.sqrt(3));
    return new StrongestMoment(run.lag() + peak.offset(), standard);
  }

  /** How far it moves when the run is cut by a factor at an end inside the audio band. */
  private static double moved(BandResponse run, EnvelopePeak peak, double factor) {
    double[] omegas = run.omegas();
    int from = 0;
    while (from < omegas.length && omegas[from] < omegas[0] * factor) {
      from++;
    }
    int to = omegas.length;
    while (to > 0 && omegas[to - 1] > omegas[omegas.length - 1] / factor) {
      to--;
    }
    double low = run.startsInside() ? moved(run, peak, from, omegas.length) : 0;
    double high = run.endsInside() ? moved(run, peak, 0, to) : 0;
    return Math.max(low, high);
  }

  private static double moved(BandResponse run, EnvelopePeak peak, int from, int to) {
    return to - from < FEWEST
        ? 0
        : Math.abs(EnvelopePeak.of(run.part(from, to)).offset() - peak.offset());
  }
}
