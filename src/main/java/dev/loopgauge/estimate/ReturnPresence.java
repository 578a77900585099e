package dev.loopgauge.estimate;

import dev.loopgauge.estimate.drift.WindowDelay;
import dev.loopgauge.estimate.reading.RecentSound;
import dev.loopgauge.estimate.result.Band;
import dev.loopgauge.estimate.result.ReturnPart;
import dev.loopgauge.estimate.spectrum.OctavePower;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where a return holds the sound that is due, and where that was lost, however long it is gone: in
 * frames of 20 ms, and pieces of 5 ms beside lost ones, against what the path, as it was last
 * heard, makes of the octaves of the reference. Where too little is due, or too little of it is
 * there or gone, nothing is said.
 */
final class ReturnPresence {
  private static final double FRAME_SECONDS = 0.02;
  private static final double HOP_SECONDS = 0.005;

  /** A tenth of the amplitude or less, as power (no source). */
  private static final double LOST = 0.01;

  /** Half way from there to all of it, in dB: an octave's mean may be off by so much. */
  private static final double THERE = 0.1;

  /** A frame tells nothing that is due less than this share of the mean (no source). */
  private static final double LOUD_ENOUGH = 0.05;

  /** The last bit of a 24-bit converter and 20 dB, so that its loss can be told: -100 dBFS. */
  private static final double FAINTEST = 1e-10;

  private final SampleRate rate;
  private final RecentSound reference;
  private final RecentSound returned;
  private final int frame;
  private final int hop;
  private HeardOctaves octaves = HeardOctaves.NONE;
  private long lag;
  private long doneTo;

  /** Nothing was heard yet. */
  ReturnPresence(SampleRate rate, RecentSound reference, RecentSound returned) {
    this.rate = rate;
    this.reference = reference;
    this.returned = returned;
    this.frame = rate.samplesIn(FRAME_SECONDS);
    this.hop = rate.samplesIn(HOP_SECONDS);
  }

  /** In a window that was read, beyond what was looked at before; changes nothing. */
  List<ReturnPart> where(long at, int window, long base, WindowDelay.Found found) {
    Samples back = returned.since(base);
    double usual = power(back, (int) (at - base), window);
    List<Band> heard = octaves.then(found.besides().bands()).fainter();
    return parts(at, window, base, Math.round(found.lag()), heard, usual);
  }

  /** The same in a window that wasn't read, by what was heard before it. */
  List<ReturnPart> where(long at, int window, long base) {
    List<Band> heard = octaves.fainter();
    if (heard.isEmpty()) {
      return List.of();
    }
    double usual = due(window, heard).of(reference.since(base), (int) (at - base));
    return parts(at, window, base, lag, heard, usual);
  }

  /** Goes on after a window. */
  void next(Optional<WindowDelay.Found> found, long at, int window) {
    doneTo = firstBehind(at, window);
    if (found.isPresent()) {
      octaves = octaves.then(found.get().besides().bands());
      lag = Math.round(found.get().lag());
    }
  }

  /** The frame of sound that the first frame starts with that doesn't lie within a window. */
  private long firstBehind(long at, int window) {
    return Math.floorDiv(at + window - frame, hop) * hop + hop;
  }

  private List<ReturnPart> parts(
      long at, int window, long base, long late, List<Band> heard, double usual) {
    List<ReturnPart> parts = new ArrayList<>();
    if (heard.isEmpty()) {
      return parts;
    }
    Due frames = new Due(base, late, heard, usual, frame);
    for (long from = Math.max(doneTo, Math.floorDiv(at, hop) * hop);
        from < firstBehind(at, window);
        from += hop) {
      Held held = from >= at ? frames.held(from) : Held.UNKNOWN;
      if (held != Held.UNKNOWN) {
        add(parts, from, held == Held.LOST);
      }
    }
    if (parts.stream().anyMatch(ReturnPart::lost)) {
      Due pieces = new Due(base, late, heard, usual, hop);
      parts.replaceAll(part -> part.lost() ? grown(part, pieces, at + window) : part);
    }
    return parts;
  }

  /** What a stretch of a return holds of the sound that is due in it. */
  private enum Held {
    THERE,
    LOST,
    UNKNOWN
  }

  /** The sound that is due in stretches of one length. */
  private final class Due {
    private final Samples sent;
    private final Samples back;
    private final long base;
    private final long late;
    private final double enough;
    private final OctavePower path;
    private final int length;

    Due(long base, long late, List<Band> heard, double usual, int length) {
      this.sent = reference.since(base);
      this.back = returned.since(base);
      this.base = base;
      this.late = late;
      this.enough = Math.max(FAINTEST, LOUD_ENOUGH * usual);
      this.path = due(length, heard);
      this.length = length;
    }

    Held held(long from) {
      int sentFrom = (int) (from - late - base);
      if (sentFrom < 0 || from < base) {
        return Held.UNKNOWN;
      }
      double wanted = path.of(sent, sentFrom);
      double there = power(back, (int) (from - base), length);
      if (wanted < enough || (there >= LOST * wanted && there <= THERE * wanted)) {
        return Held.UNKNOWN;
      }
      return there < LOST * wanted ? Held.LOST : Held.THERE;
    }
  }

  /** A loss with the pieces of 5 ms beside its frames that are lost too, up to what is there. */
  private ReturnPart grown(ReturnPart lost, Due pieces, long end) {
    long from = Math.round(lost.fromSeconds() * rate.hertz());
    long to = Math.round(lost.toSeconds() * rate.hertz());
    long first = from;
    for (long piece = from - hop; piece >= from - frame; piece -= hop) {
      Held held = pieces.held(piece);
      if (held == Held.THERE) {
        break;
      }
      first = held == Held.LOST ? piece : first;
    }
    long behind = to;
    for (long piece = to; piece + hop <= Math.min(end, to + frame); piece += hop) {
      Held held = pieces.held(piece);
      if (held == Held.THERE) {
        break;
      }
      behind = held == Held.LOST ? piece + hop : behind;
    }
    return new ReturnPart(seconds(first), seconds(behind), true);
  }

  private double seconds(long samples) {
    return (double) samples / rate.hertz();
  }

  /** Frames of a kind that lie side by side are one part. */
  private void add(List<ReturnPart> parts, long from, boolean lost) {
    double starts = seconds(from);
    double ends = seconds(from + frame);
    int last = parts.size() - 1;
    if (last >= 0 && parts.get(last).lost() == lost && parts.get(last).toSeconds() > starts) {
      parts.set(last, new ReturnPart(parts.get(last).fromSeconds(), ends, lost));
    } else {
      parts.add(new ReturnPart(starts, ends, lost));
    }
  }

  private OctavePower due(int length, List<Band> heard) {
    return new OctavePower(
        rate,
        length,
        heard.stream().mapToDouble(Band::centreHz).toArray(),
        heard.stream().mapToDouble(Band::levelDb).toArray());
  }

  private static double power(Samples samples, int from, int length) {
    double[] sound = new double[length];
    samples.copyTo(from, sound, 0, length);
    double sum = 0;
    for (double sample : sound) {
      sum += sample * sample;
    }
    return sum / length;
  }
}
