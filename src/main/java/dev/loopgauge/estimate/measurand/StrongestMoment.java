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
  /** What a cut by one octave counts against one by half an octave, which is nearer the truth. */
  private static final double OF_OCTAVE = 0.5;

  /** What the spread of the octaves' group delays leaves open beside that. */
  private static final double OF_SPREAD = 0.003;

  private static final int FEWEST = 4;

  /** The moment of a run of bands. */
  static StrongestMoment of(BandResponse run) {
    EnvelopePeak peak = EnvelopePeak.of(run);
    double half = moved(run, peak, Math.sqrt(2));
    double octave = moved(run, peak, 2);
    double spread = GroupDelays.spread(GroupDelays.of(run));
    double standard =
        Math.sqrt(
            Math.pow(peak.standard(), 2)
                + half * half
                + Math.pow(OF_OCTAVE * octave, 2)
                + Math.pow(OF_SPREAD * spread, 2));
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
