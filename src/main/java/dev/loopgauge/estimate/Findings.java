package dev.loopgauge.estimate;

import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** The words for what is found in a capture. */
final class Findings {
  /** A sound that is no later than this, in ms, came past the path: 0.00 ms as it is told. */
  private static final double AT_ONCE_MS = 0.005;

  private static final String TURN_DOWN =
      "turn down the input gain or the send level until the peaks stay below full scale";
  private static final String CHECK_PATCH = "`loopgauge patch` shows which return hears which send";

  private static final int MOST_STEPS = 3;

  private Findings() {}

  static Finding silentReference() {
    return refusing(
        FindingCode.NO_REFERENCE,
        "the reference is silent",
        "is the reference patched, and is that its channel? " + CHECK_PATCH);
  }

  static Finding silentReturn() {
    return refusing(
        FindingCode.NO_RETURN,
        "the return is silent",
        "is the path muted, and is that its channel? " + CHECK_PATCH);
  }

  static Finding clipped(Clipping clipping) {
    return new Finding(
        FindingCode.CLIPPED,
        clipping.spoils(),
        format("%.2g %% of the return's samples are clipped", 100 * clipping.share()),
        TURN_DOWN);
  }

  static Finding clippedWindows(int clipped, boolean all) {
    return new Finding(
        FindingCode.CLIPPED,
        all,
        format("the return is clipped in %d window%s", clipped, clipped == 1 ? "" : "s"),
        TURN_DOWN);
  }

  static Finding nothingThere() {
    return refusing(
        FindingCode.NO_RETURN,
        "the return holds nothing of the reference",
        "is the path muted, and are return and reference the right channels? " + CHECK_PATCH);
  }

  static Finding faintReference(double quieterDb) {
    return refusing(
        FindingCode.NO_REFERENCE,
        format(
            "the return holds nothing of the reference, which is %.0f dB quieter than the return",
            quieterDb),
        "is the reference really patched, or does its channel only hear hiss? Check its cable, its"
            + " gain and its channel; "
            + CHECK_PATCH);
  }

  static Finding tooFaint(double signalToNoiseDb) {
    return refusing(
        FindingCode.WEAK_RETURN,
        format(
            "the return holds something like the reference, but too faint to place: %.1f dB"
                + " against all else",
            signalToNoiseDb),
        "raise the send level or the input gain, use a longer sweep or more repeats, or quieten"
            + " the room");
  }

  static Finding tooShort() {
    return refusing(
        FindingCode.WEAK_RETURN,
        "most of what the reference holds falls before or after the recording of the return",
        "record longer than the delay, ten times as long or more, and both from the same instant");
  }

  static Finding tooNarrow() {
    return refusing(
        FindingCode.WEAK_RETURN,
        "what the return has in common with the reference lies in a handful of frequencies: a room"
            + " smears the sound, only bass comes back, or both hear one hum",
        "go nearer to the loudspeaker or take the return before the room; use a longer sweep, or a"
            + " passage with more treble; look for hum in both channels");
  }

  static Finding otherSound() {
    return refusing(
        FindingCode.WEAK_RETURN,
        "what stands in the return where the click should be is no click",
        "quieten the room, or use a sweep: it can't be mistaken for a clap or a cough, and is known"
            + " again after a subwoofer, which makes no click of a click");
  }

  static Finding rival(AmbiguityTest.Rival rival, SampleRate rate) {
    String elsewhere =
        format(
            "the delay could as well be %.2f ms %s",
            ms(Math.abs(rival.distance()), rate), rival.distance() > 0 ? "later" : "earlier");
    return rival.repeats()
        ? refusing(
            FindingCode.NO_REFERENCE,
            "the reference repeats itself: " + elsewhere,
            "use a sweep, or a passage of speech or music that changes")
        : refusing(
            FindingCode.WEAK_RETURN,
            elsewhere + ": a room smears the sound, or it is too faint to tell",
            "go nearer to the loudspeaker or take the return before the room; raise the send level,"
                + " use a longer sweep or more repeats");
  }

  static Finding beyondWindow(double lag, double searchedSeconds, SampleRate rate) {
    return refusing(
        FindingCode.BEYOND_WINDOW,
        format(
            "the return is about %.2f s %s, beyond the %.2f s that were searched",
            Math.abs(lag) / rate.hertz(), lag > 0 ? "late" : "early", searchedSeconds),
        format(
            "search further: `--max-delay %.1f`",
            Math.min(LongestDelay.SECONDS, 0.5 + Math.abs(lag) / rate.hertz())));
  }

  static Finding wrongSpeed(SampleRate one, SampleRate other) {
    return refusing(
        FindingCode.RATE_MISMATCH,
        format(
            "the return runs at %d/%d of the reference's speed, %.1f %% too %s",
            one.hertz(),
            other.hertz(),
            100 * Math.abs((double) one.hertz() / other.hertz() - 1),
            one.hertz() > other.hertz() ? "fast" : "slow"),
        "one device plays or records at 48 kHz what is labelled 44.1 kHz, or the other way: check"
            + " the sample rate of each");
  }

  static Finding inverted() {
    return new Finding(
        FindingCode.INVERTED,
        false,
        "the return is inverted against the reference",
        "look for a polarity switch, a cable with crossed wires, or a stage that inverts");
  }

  static Finding louderThanReference(double levelDb) {
    return new Finding(
        FindingCode.NO_REFERENCE,
        false,
        format("the return holds the reference %.0f dB louder than the reference itself", levelDb),
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
    return new Finding(
        FindingCode.TWO_ARRIVALS,
        false,
        format(
            "a second arrival, %.2f ms %s and %.1f dB %s, may be the path instead",
            ms(Math.abs(apart), rate),
            apart > 0 ? "later" : "earlier",
            Math.abs(Decibels.ofFactor(other.gain() / measured.gain())),
            Math.abs(other.gain()) > Math.abs(measured.gain()) ? "louder" : "quieter"),
        (apart > 0 && Math.abs(ms(measured.lag(), rate)) < AT_ONCE_MS
                ? "crosstalk? Does the send leak into the return past the path?"
                : "is dry signal leaking around the insert, or is the input patched twice?")
            + (open ? " Or choose: `--arrival first` or `--arrival strongest`" : ""));
  }

  static Finding gap(LostSound.Gap gap, int more, boolean refuses, SampleRate rate) {
    return new Finding(
        FindingCode.DROPOUT,
        refuses,
        format(
            "about %.0f ms of sound are missing at %.2f s%s",
            ms(gap.length(), rate),
            (double) gap.from() / rate.hertz(),
            more == 0 ? "" : format(", and %d more such gaps", more)),
        "take a larger buffer or block size, close other programs, and measure again");
  }

  static Finding torn(Splice splice, boolean refuses, SampleRate rate) {
    String what =
        splice.later().isEmpty()
            ? "a block of sound was lost or repeated"
            : format(
                "about %.0f samples (%.2f ms) of sound were %s",
                Math.abs(splice.later().getAsDouble()),
                ms(Math.abs(splice.later().getAsDouble()), rate),
                splice.later().getAsDouble() < 0 ? "lost" : "put in or repeated");
    return new Finding(
        FindingCode.DROPOUT,
        refuses,
        format(
            "at %.2f s %s: before it the delay is another than after",
            (double) splice.at() / rate.hertz(), what),
        "take a larger buffer or block size, close other programs, and measure again");
  }

  static Finding gainModulation(double byDb) {
    return new Finding(
        FindingCode.LEVEL_MOVES,
        false,
        format("the path's level moves by about %.0f dB while it plays", byDb),
        "something in the path changes the gain: switch off automatic level, noise suppression, gates"
            + " and compressors on this input and path, and measure again");
  }

  static Finding drifting(ClockDrift drift) {
    double magnitude = Math.abs(drift.ppm());
    return new Finding(
        FindingCode.CLOCKS_NOT_LOCKED,
        false,
        format(
            "the clocks are not locked: the return %s by %.1f ppm, %s ms an hour (± %s ppm)",
            drift.ppm() > 0 ? "falls behind" : "runs ahead",
            magnitude,
            format(magnitude < 30 ? "%.1f" : "%.0f", magnitude * 3.6),
            twoDigits(drift.uncertaintyPpm())),
        likelyCause(magnitude));
  }

  /** Common practice, no source: crystals keep within some tens of ppm; 1000 / 1001 is 999 ppm. */
  private static String likelyCause(double ppm) {
    if (ppm < 200) {
      return "two devices each run on their own clock: let one lead and sync the other to it";
    }
    if (ppm > 700 && ppm < 1300) {
      return "about 0.1 % is a pull-down rate against a plain one, or samples lost all the time:"
          + " check the sample rates, then look for dropouts";
    }
    if (ppm < 2000) {
      return "no two good clocks are so far apart: look for samples lost or repeated all the time,"
          + " and for a rate converter in the path";
    }
    return "the rates differ: check the sample rate of each device";
  }

  static Finding groups(Map<Double, Integer> groups) {
    String counts =
        groups.entrySet().stream()
            .map(group -> format("%d at %.2f", group.getValue(), group.getKey()))
            .collect(Collectors.joining(", "));
    return new Finding(
        FindingCode.DROPOUT,
        false,
        "the repeats fall into groups: " + counts + " samples",
        "the path changed in between: a dropout, a reconnected stream or a changed block size."
            + " Measure again");
  }

  static Finding disagree(List<Double> delays) {
    String shown = delays.stream().map(d -> format("%.2f", d)).collect(Collectors.joining(", "));
    return refusing(
        FindingCode.DROPOUT,
        "no two repeats agree: " + shown + " samples",
        "the path changes all the time: look for dropouts, and measure again");
  }

  static Finding stepped(List<Step> steps) {
    String shown =
        steps.stream()
            .limit(MOST_STEPS)
            .map(
                step ->
                    format("by %+.2f samples at %.0f s", step.changeSamples(), step.atSeconds()))
            .collect(Collectors.joining(", "));
    int more = steps.size() - MOST_STEPS;
    return new Finding(
        FindingCode.DROPOUT,
        false,
        "the delay jumped and stayed: " + shown + (more > 0 ? ", and " + more + " times more" : ""),
        "look at what happened then: a dropout, a reopened stream, a changed block size or plug-in");
  }

  static Finding noWindow(double windowSeconds) {
    return refusing(
        FindingCode.NO_RETURN,
        format("in no window of %.1f s could the return be placed", windowSeconds),
        "is the return the right channel, and is there sound? Look further with --max-delay, or"
            + " take other windows with --track");
  }

  /** An uncertainty in two digits, rounded up. */
  private static String twoDigits(double uncertainty) {
    BigDecimal rounded = BigDecimal.valueOf(uncertainty).round(new MathContext(2, RoundingMode.UP));
    return rounded.toPlainString();
  }

  private static Finding refusing(FindingCode code, String text, String hint) {
    return new Finding(code, true, text, hint);
  }

  private static double ms(double samples, SampleRate rate) {
    return new Latency(samples, rate).ms();
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
