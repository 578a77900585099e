package dev.loopgauge.estimate;

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
