package dev.loopgauge.capture.jack;

import dev.loopgauge.signal.Signal;

/**
 * The plainest way to find a whole-sample delay: the sum of products at every lag, from the
 * definition.
 *
 * @param lag the lag, in samples, at which reference and return agree most, either way up
 * @param gain the return over the reference at that lag; negative when inverted
 */
record DirectCorrelation(int lag, double gain) {
  static DirectCorrelation of(Signal reference, Signal heard) {
    DirectCorrelation best = new DirectCorrelation(0, 0);
    int used = lastSound(reference) + 1;
    double energy = reference.energy();
    for (int lag = 0; lag + used <= heard.length(); lag++) {
      double sum = 0;
      for (int i = 0; i < used; i++) {
        sum += reference.at(i) * heard.at(i + lag);
      }
      if (Math.abs(sum / energy) > Math.abs(best.gain)) {
        best = new DirectCorrelation(lag, sum / energy);
      }
    }
    return best;
  }

  private static int lastSound(Signal signal) {
    int last = signal.length() - 1;
    while (last > 0 && signal.at(last) == 0) {
      last--;
    }
    return last;
  }
}
