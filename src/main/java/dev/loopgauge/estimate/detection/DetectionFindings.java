package dev.loopgauge.estimate.detection;

import dev.loopgauge.estimate.reading.LongestDelay;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.util.Locale;

/** The words for why nothing that was sent could be found and placed in a return. */
public final class DetectionFindings {
  private static final String CHECK_PATCH = "`loopgauge patch` shows which return hears which send";

  private DetectionFindings() {}

  public static Finding silentReference() {
    return Finding.refusing(
        FindingCode.NO_REFERENCE,
        "the reference is silent",
        "is the reference patched, and is that its channel? " + CHECK_PATCH);
  }

  public static Finding silentReturn() {
    return Finding.refusing(
        FindingCode.NO_RETURN,
        "the return is silent",
        "is the path muted, and is that its channel? " + CHECK_PATCH);
  }

  static Finding nothingThere() {
    return Finding.refusing(
        FindingCode.NO_RETURN,
        "the return holds nothing of the reference",
        "is the path muted, and are return and reference the right channels? " + CHECK_PATCH);
  }

  static Finding faintReference(double quieterDb) {
    return Finding.refusing(
        FindingCode.NO_REFERENCE,
        String.format(
            Locale.ROOT,
            "the return holds nothing of the reference, which is %.0f dB quieter than the return",
            quieterDb),
        "is the reference really patched, or does its channel only hear hiss? Check its cable, its"
            + " gain and its channel; "
            + CHECK_PATCH);
  }

  static Finding tooFaint(double signalToNoiseDb) {
    return Finding.refusing(
        FindingCode.WEAK_RETURN,
        String.format(
            Locale.ROOT,
            "the return holds something like the reference, but too faint to place: %.1f dB"
                + " against all else",
            signalToNoiseDb),
        "raise the send level or the input gain, use a longer sweep or more repeats, or quieten"
            + " the room");
  }

  public static Finding tooShort() {
    return Finding.refusing(
        FindingCode.WEAK_RETURN,
        "most of what the reference holds falls before or after the recording of the return",
        "record longer than the delay, ten times as long or more, and both from the same instant");
  }

  static Finding tooNarrow() {
    return Finding.refusing(
        FindingCode.WEAK_RETURN,
        "what the return has in common with the reference lies in a handful of frequencies: a room"
            + " smears the sound, only bass comes back, or both hear one hum",
        "go nearer to the loudspeaker or take the return before the room; use a longer sweep, or a"
            + " passage with more treble; look for hum in both channels");
  }

  static Finding otherSound() {
    return Finding.refusing(
        FindingCode.WEAK_RETURN,
        "what stands in the return where the click should be is no click",
        "quieten the room, play it more than once, or use a sweep: it can't be mistaken for a clap or"
            + " a cough, and is known again after a filter, which makes no click of a click");
  }

  static Finding inPart(double missing) {
    return Finding.refusing(
        FindingCode.NO_RETURN,
        String.format(
            Locale.ROOT,
            "%.0f %% of the reference isn't in the return where the rest of it is: both hold the"
                + " same sounds at different times, or much was lost",
            100 * missing),
        "is the return another part of the same programme? " + CHECK_PATCH + "; or use a sweep");
  }

  static Finding rival(AmbiguityTest.Rival rival, SampleRate rate) {
    String elsewhere =
        String.format(
            Locale.ROOT,
            "the delay could as well be %.2f ms %s",
            new Latency(Math.abs(rival.distance()), rate).ms(),
            rival.distance() > 0 ? "later" : "earlier");
    return rival.repeats()
        ? Finding.refusing(
            FindingCode.NO_REFERENCE,
            "the reference repeats itself: " + elsewhere,
            "use a sweep, or a passage of speech or music that changes")
        : Finding.refusing(
            FindingCode.WEAK_RETURN,
            elsewhere + ": a room smears the sound, or it is too faint to tell",
            "go nearer to the loudspeaker or take the return before the room; raise the send level,"
                + " use a longer sweep or more repeats");
  }

  static Finding beyondWindow(double lag, double searchedSeconds, SampleRate rate) {
    return Finding.refusing(
        FindingCode.BEYOND_WINDOW,
        String.format(
            Locale.ROOT,
            "the return is about %.2f s %s, beyond the %.2f s that were searched",
            Math.abs(lag) / rate.hertz(),
            lag > 0 ? "late" : "early",
            searchedSeconds),
        String.format(
            Locale.ROOT,
            "search further: `--max-delay %.1f`",
            Math.min(LongestDelay.SECONDS, 0.5 + Math.abs(lag) / rate.hertz())));
  }

  static Finding wrongSpeed(SampleRate one, SampleRate other) {
    return Finding.refusing(
        FindingCode.RATE_MISMATCH,
        String.format(
            Locale.ROOT,
            "the return runs at %d/%d of the reference's speed, %.1f %% too %s",
            one.hertz(),
            other.hertz(),
            100 * Math.abs((double) one.hertz() / other.hertz() - 1),
            one.hertz() > other.hertz() ? "fast" : "slow"),
        "one device plays or records at 48 kHz what is labelled 44.1 kHz, or the other way: check"
            + " the sample rate of each");
  }
}
