package dev.loopgauge.estimate;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Signal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What can be told from the signals alone, before anything is correlated. */
final class CaptureChecks {
  /** Below this a channel holds nothing but the last bit of a 24-bit converter, in dBFS rms. */
  private static final double SILENCE_DBFS = -120;

  /** This many equal samples in a row may be a flat top. */
  private static final int FLAT_TOP = 3;

  /** A flat top breaks off by more than this share of the peak; a low tone's crest doesn't. */
  private static final double BREAK = 2e-4;

  private static final double SAME = 1e-6;
  private static final double HARMLESS_SHARE = 0.001;

  private CaptureChecks() {}

  /** A reason not to look for a delay at all. */
  static Optional<Finding> silence(List<Reading> readings) {
    if (readings.stream().anyMatch(r -> isSilent(r.reference()))) {
      return Optional.of(
          new Finding(
              FindingCode.NO_REFERENCE,
              true,
              "the reference is silent",
              "is the reference patched, and is that its channel? `measure --check-patch` shows"
                  + " which return hears which send"));
    }
    if (readings.stream().anyMatch(r -> isSilent(r.ret()))) {
      return Optional.of(
          new Finding(
              FindingCode.NO_RETURN,
              true,
              "the return is silent",
              "is the path muted, and is that its channel? `measure --check-patch` shows which"
                  + " return hears which send"));
    }
    return Optional.empty();
  }

  private static boolean isSilent(Signal signal) {
    return Decibels.ofFactor(signal.rms()) < SILENCE_DBFS;
  }

  /**
   * Whether the return was driven into its ceiling. A reference may have flat tops of its own, as a
   * maximum-length sequence does; only more of them count.
   */
  static Optional<Finding> clipping(List<Reading> readings) {
    double share = 0;
    for (Reading reading : readings) {
      share = Math.max(share, flatShare(reading.ret()) - flatShare(reading.reference()));
    }
    if (share <= 0) {
      return Optional.empty();
    }
    return Optional.of(
        new Finding(
            FindingCode.CLIPPED,
            share > HARMLESS_SHARE,
            String.format(Locale.ROOT, "%.2g %% of the samples are clipped", 100 * share),
            "turn down the input gain or the send level until the peaks stay below full scale"));
  }

  /** The share of samples that lie in flat tops at the peak. */
  private static double flatShare(Signal signal) {
    double peak = signal.peak();
    int flat = 0;
    int start = 0;
    for (int i = 1; i <= signal.length(); i++) {
      boolean goesOn =
          i < signal.length() && Math.abs(signal.at(i) - signal.at(start)) <= SAME * peak;
      if (!goesOn) {
        flat += isFlatTop(signal, start, i, peak) ? i - start : 0;
        start = i;
      }
    }
    return flat / (double) signal.length();
  }

  private static boolean isFlatTop(Signal signal, int start, int end, double peak) {
    return end - start >= FLAT_TOP
        && Math.abs(signal.at(start)) >= (1 - SAME) * peak
        && breaksOff(signal, start, start - 1, peak)
        && breaksOff(signal, start, end, peak);
  }

  private static boolean breaksOff(Signal signal, int top, int beside, double peak) {
    return beside < 0
        || beside >= signal.length()
        || Math.abs(signal.at(top) - signal.at(beside)) > BREAK * peak;
  }
}
