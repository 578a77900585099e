package dev.loopgauge.estimate;

import dev.loopgauge.estimate.measurand.GroupDelays;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.Locale;

/** The words for what is found of a delay that can be trusted. */
final class ArrivalFindings {
  /** A sound that is no later than this, in ms, came past the path: 0.00 ms as it is told. */
  private static final double AT_ONCE_MS = 0.005;

  private ArrivalFindings() {}

  static Finding inverted() {
    return Finding.remark(
        FindingCode.INVERTED,
        "the return is inverted against the reference",
        "look for a polarity switch, a cable with crossed wires, or a stage that inverts");
  }

  static Finding dispersive(GroupDelays.Ends ends, SampleRate rate) {
    return Finding.remark(
        FindingCode.DISPERSIVE,
        String.format(
            Locale.ROOT,
            "the path delays frequencies differently: %s, %s",
            octave(ends.late(), rate),
            octave(ends.early(), rate)),
        "a filter does that: a crossover, an equaliser, a subwoofer. The budget is compared with"
            + " the delay that no filter explains");
  }

  private static String octave(GroupDelays.Octave octave, SampleRate rate) {
    double hertz = octave.omega() / (2 * Math.PI) * rate.hertz();
    double ms = new Latency(octave.samples(), rate).ms();
    return hertz < 1000
        ? String.format(Locale.ROOT, "%.2f ms at %.0f Hz", ms, hertz)
        : String.format(Locale.ROOT, "%.2f ms at %.1f kHz", ms, hertz / 1000);
  }

  static Finding louderThanReference(double levelDb) {
    return Finding.remark(
        FindingCode.NO_REFERENCE,
        String.format(
            Locale.ROOT,
            "the return holds the reference %.0f dB louder than the reference itself",
            levelDb),
        "is the reference really patched, or does its channel only hear crosstalk? Check its cable"
            + " and gain");
  }

  /**
   * Another arrival that may be the path.
   *
   * @param open whether the user is still to say which
   */
  static Finding twoArrivals(
      FittedArrival measured, FittedArrival other, boolean open, SampleRate rate) {
    double apart = other.lag() - measured.lag();
    return Finding.remark(
        FindingCode.TWO_ARRIVALS,
        String.format(
            Locale.ROOT,
            "a second arrival, %.2f ms %s and %.1f dB %s, may be the path instead",
            new Latency(Math.abs(apart), rate).ms(),
            apart > 0 ? "later" : "earlier",
            Math.abs(Decibels.ofFactor(other.gain() / measured.gain())),
            Math.abs(other.gain()) > Math.abs(measured.gain()) ? "louder" : "quieter"),
        (apart > 0 && Math.abs(new Latency(measured.lag(), rate).ms()) < AT_ONCE_MS
                ? "crosstalk? Does the send leak into the return past the path?"
                : "is dry signal leaking around the insert, or is the input patched twice?")
            + (open ? " Or choose: `--arrival first` or `--arrival strongest`" : ""));
  }
}
