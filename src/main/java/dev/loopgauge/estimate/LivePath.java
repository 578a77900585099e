package dev.loopgauge.estimate;

import dev.loopgauge.estimate.drift.ChangeDate;
import dev.loopgauge.estimate.drift.Following;
import dev.loopgauge.estimate.drift.WindowDelay;
import dev.loopgauge.estimate.integrity.LostSound;
import dev.loopgauge.estimate.reading.Loudness;
import dev.loopgauge.estimate.reading.RecentSound;
import dev.loopgauge.estimate.reading.Window;
import dev.loopgauge.estimate.result.ChangeTime;
import dev.loopgauge.estimate.result.FollowedDelay;
import dev.loopgauge.estimate.result.MissingSound;
import dev.loopgauge.estimate.result.ReturnPart;
import dev.loopgauge.estimate.result.SentLevel;
import dev.loopgauge.estimate.result.WindowReading;
import dev.loopgauge.signal.Decibels;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;
import java.util.List;
import java.util.Optional;

/** One path whose sound goes by: what each of its windows holds. */
final class LivePath {
  /** As {@link SentLevel} says. */
  private static final double SHORT_SECONDS = 0.1;

  private final SampleRate rate;
  private final int window;
  private final RecentSound reference;
  private final RecentSound returned;
  private final LostSegments lost;
  private final Following following;
  private final ReturnPresence presence;

  /**
   * Nothing was heard yet.
   *
   * @param lost frames that the recording lost
   */
  LivePath(
      SampleRate rate,
      WatchPlan plan,
      RecentSound reference,
      RecentSound returned,
      LostSegments lost) {
    this.rate = rate;
    this.window = plan.window(rate);
    this.reference = reference;
    this.returned = returned;
    this.lost = lost;
    this.following = new Following(window, plan.maxDelaySeconds(), true);
    this.presence = new ReturnPresence(rate, reference, returned);
  }

  /**
   * What a window came to.
   *
   * @param interrupted whether frames of it were lost while it was recorded: then nothing was read
   * @param look its delay
   * @param parts where sound that was due was lost, and where it was there
   */
  record Heard(boolean interrupted, Following.Look look, List<ReturnPart> parts) {}

  /**
   * Listens to a window; changes nothing.
   *
   * @param at the frame that it starts with
   * @param base the first frame to look at around it
   */
  Heard hear(long at, long base) {
    if (isInterrupted(at)) {
      return new Heard(true, new Following.Look(Optional.empty(), false), List.of());
    }
    Following.Look look =
        following.look(reference.since(base), returned.since(base), (int) (at - base), at);
    List<ReturnPart> parts =
        look.found()
            .map(found -> presence.where(at, window, base, found))
            .orElseGet(() -> presence.where(at, window, base));
    return new Heard(false, look, parts);
  }

  /** Whether frames were lost that the window's sound or its late arrival would lie in. */
  private boolean isInterrupted(long at) {
    double lag = following.lastLag().orElse(0.0);
    return lost.touch(
        at + (long) Math.min(0, lag), at + window + (long) Math.ceil(Math.max(0, lag)));
  }

  /** Goes on after a window. */
  void next(Heard heard, long at) {
    following.next(heard.look(), at);
    presence.next(heard.look().found(), at, window);
  }

  /** What a window came to, in seconds and dB. */
  WindowReading reading(Heard heard, long at, long base) {
    return new WindowReading(
        seconds(at),
        seconds(at + window),
        sent(at, base),
        Decibels.ofPower(power(part(returned, at, base))),
        heard.interrupted(),
        heard.look().clipped(),
        heard.parts(),
        heard.look().found().map(found -> followed(found, at)));
  }

  private FollowedDelay followed(WindowDelay.Found found, long at) {
    double middle = (at + window / 2.0) / rate.hertz();
    return new FollowedDelay(
        found.at(middle, rate),
        found.atCentre(middle, rate),
        found.levelDb(),
        found.gain() < 0,
        found.besides().bands(),
        missing(found.besides().gaps(), at),
        missing(found.besides().doubtful(), at),
        found.besides().unexplained());
  }

  private List<MissingSound> missing(List<LostSound.Gap> gaps, long at) {
    return gaps.stream()
        .map(
            gap ->
                new MissingSound(
                    Math.max(0, seconds(at + gap.from())), 1000 * seconds(gap.length())))
        .toList();
  }

  private SentLevel sent(long at, long base) {
    Samples sound = part(reference, at, base);
    int length = rate.samplesIn(SHORT_SECONDS);
    double loudest = 0;
    for (int from = 0; from + length <= window; from += length) {
      loudest = Math.max(loudest, power(Window.on(sound, from, length)));
    }
    return new SentLevel(
        Decibels.ofPower(power(sound)),
        Decibels.ofPower(loudest),
        Decibels.ofFactor(Loudness.of(sound).peak()));
  }

  private Samples part(RecentSound channel, long at, long base) {
    return new Window(channel.since(base), (int) (at - base), window);
  }

  private static double power(Samples sound) {
    return Loudness.of(sound).energy() / sound.length();
  }

  /**
   * When the delay changed; empty where its sound is gone or was lost.
   *
   * @param base the first frame to look at
   * @param from the earliest frame
   * @param to the latest frame
   * @param before the delay before, in samples
   * @param after the delay after, in samples
   */
  Optional<ChangeTime> changed(long base, long from, long to, double before, double after) {
    if (from >= to || lost.touch(from, to)) {
      return Optional.empty();
    }
    ChangeDate.Found found =
        new ChangeDate(reference.since(base), returned.since(base))
            .between((int) (from - base), (int) (to - base), before, after);
    return Optional.of(new ChangeTime(seconds(base + found.at()), seconds(found.within())));
  }

  private double seconds(long frames) {
    return (double) frames / rate.hertz();
  }
}
