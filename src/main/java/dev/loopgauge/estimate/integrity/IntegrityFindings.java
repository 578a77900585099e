package dev.loopgauge.estimate.integrity;

import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.Locale;
import java.util.OptionalInt;

/** The words for sound that did not come back as it was sent: clipped, lost, spliced, modulated. */
public final class IntegrityFindings {
  private static final String TURN_DOWN =
      "turn down the input gain or the send level until the peaks stay below full scale";

  private IntegrityFindings() {}

  /**
   * Clipping.
   *
   * @param share the share of the return's samples, 0 to 1
   * @param refuses whether too little is left of the delay
   */
  public static Finding clipped(double share, boolean refuses) {
    return new Finding(
        FindingCode.CLIPPED,
        refuses,
        String.format(
            Locale.ROOT,
            "%.2g %% of the return's samples are clipped%s",
            100 * share,
            refuses ? ": too few others tell the delay" : ""),
        TURN_DOWN);
  }

  public static Finding clippedWindows(int clipped, boolean all) {
    return new Finding(
        FindingCode.CLIPPED,
        all,
        String.format(
            Locale.ROOT, "the return is clipped in %d window%s", clipped, clipped == 1 ? "" : "s"),
        TURN_DOWN);
  }

  public static Finding gap(LostSound.Gap gap, int more, boolean refuses, SampleRate rate) {
    return new Finding(
        FindingCode.DROPOUT,
        refuses,
        String.format(
            Locale.ROOT,
            "about %.0f ms of sound are missing at %.2f s%s",
            new Latency(gap.length(), rate).ms(),
            (double) gap.from() / rate.hertz(),
            more == 0 ? "" : String.format(Locale.ROOT, ", and %d more such gaps", more)),
        "take a larger buffer or block size, close other programs, and measure again");
  }

  public static Finding spliced(Splice splice, boolean refuses, SampleRate rate) {
    String what =
        splice.later().isEmpty()
            ? "a block of sound was lost or repeated"
            : moved(Math.rint(splice.later().getAsDouble()), rate);
    return new Finding(
        FindingCode.DROPOUT,
        refuses,
        String.format(
            Locale.ROOT,
            "at %.2f s %s: before it the delay is another than after",
            (double) splice.at() / rate.hertz(),
            what),
        "take a larger buffer or block size, close other programs, and measure again");
  }

  private static String moved(double later, SampleRate rate) {
    double samples = Math.abs(later);
    return String.format(
        Locale.ROOT,
        "about %.0f %s (%.2f ms) of sound %s %s",
        samples,
        samples == 1 ? "sample" : "samples",
        new Latency(samples, rate).ms(),
        samples == 1 ? "was" : "were",
        later < 0 ? "lost" : "put in or repeated");
  }

  public static Finding gainModulation(double byDb) {
    return Finding.remark(
        FindingCode.LEVEL_MOVES,
        String.format(Locale.ROOT, "the path's level moves by about %.0f dB while it plays", byDb),
        "something in the path changes the gain: switch off automatic level, noise suppression, gates"
            + " and compressors on this input and path, and measure again");
  }

  /**
   * A level that steps, by this many dB upwards, at a sample of the capture or within the repeats.
   */
  public static Finding levelStep(double byDb, OptionalInt at, SampleRate rate) {
    String when =
        at.isPresent()
            ? String.format(Locale.ROOT, "at about %.1f s", (double) at.getAsInt() / rate.hertz())
            : "from the first repeat to the last";
    return Finding.remark(
        FindingCode.LEVEL_MOVES,
        String.format(
            Locale.ROOT,
            "the path's level %s by about %.1f dB %s",
            byDb > 0 ? "rises" : "falls",
            Math.abs(byDb),
            when),
        "something in the path changes the gain: keep faders still, switch off automatic level,"
            + " gates and compressors on this input and path, and measure again");
  }
}
