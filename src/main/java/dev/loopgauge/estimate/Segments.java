package dev.loopgauge.estimate;

import dev.loopgauge.estimate.reading.LongestDelay;
import dev.loopgauge.estimate.reading.Loudest;
import dev.loopgauge.estimate.reading.Loudness;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.reading.Window;
import dev.loopgauge.estimate.spectrum.KeptTransforms;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where a recording is read. A short one is read as a whole. Over a long one clocks may drift and
 * paths may change, so it is cut into parts, and of each the loudest stretch is one reading: what
 * the readings have in common is the delay, and how they differ tells drift from change. There are
 * at most {@value #MOST}, so that an hour takes no more time and memory than two minutes.
 */
public final class Segments {
  /** Recordings up to this length are read as a whole, in seconds. */
  static final double WHOLE_SECONDS = 15;

  private static final double SHORTEST_SECONDS = 5;
  private static final double LONGEST_SECONDS = 10;
  private static final int MOST = 12;

  /** A stretch is at least this many times as long as the longest delay. */
  private static final int PER_DELAY = 4;

  /** Segments quieter than this against the loudest tell nothing, as a factor of energy: 40 dB. */
  private static final double FAINT = 1e-4;

  private final Samples reference;
  private final int stretch;
  private final double maxDelaySeconds;
  private final List<Integer> starts;
  private final Optional<KeptTransforms> kept;

  private Segments(Samples reference, double maxDelaySeconds, Optional<KeptTransforms> kept) {
    this.kept = kept;
    this.reference = reference;
    this.maxDelaySeconds = maxDelaySeconds;
    SampleRate rate = reference.rate();
    double seconds = (double) reference.length() / rate.hertz();
    double shortest = Math.max(SHORTEST_SECONDS, PER_DELAY * maxDelaySeconds);
    int parts = (int) Math.min(MOST, seconds / shortest);
    if (seconds <= WHOLE_SECONDS || parts < 2) {
      this.stretch = reference.length();
      this.starts = List.of(0);
    } else {
      int part = reference.length() / parts;
      this.stretch = Math.min(part, rate.samplesIn(Math.max(LONGEST_SECONDS, shortest)));
      this.starts = loudest(parts, part);
    }
  }

  /**
   * The segments of a recording.
   *
   * @param reference the recording of what went in, not empty
   * @param maxDelaySeconds the longest delay that is looked for
   */
  public static Segments of(Samples reference, double maxDelaySeconds) {
    return new Segments(reference, maxDelaySeconds, Optional.empty());
  }

  /**
   * The same to be read against many returns: what they come to by themselves is worked out once,
   * and kept in up to 128 MiB of memory.
   */
  public static Segments forMany(Samples reference, double maxDelaySeconds) {
    return new Segments(reference, maxDelaySeconds, Optional.of(new KeptTransforms()));
  }

  /** Where what they come to is kept. */
  Optional<KeptTransforms> kept() {
    return kept;
  }

  /** How many there are. */
  public int count() {
    return starts.size();
  }

  /** How long each is, in seconds. */
  public double seconds() {
    return (double) stretch / reference.rate().hertz();
  }

  /** Whether they leave some of the reference out. */
  public boolean leaveOut() {
    return (long) starts.size() * stretch < reference.length() - starts.size();
  }

  /**
   * The segments against a return that started with the reference. Segments in which the return is
   * silent are left out, unless it is silent in all.
   *
   * @throws IllegalArgumentException as {@link Reading}
   */
  List<Reading> against(Samples ret) {
    boolean whole = stretch == reference.length();
    double furthest = whole ? LongestDelay.SECONDS : maxDelaySeconds;
    long tail = reference.rate().samplesIn(furthest);
    List<Reading> readings = new ArrayList<>();
    for (int start : starts) {
      int length = (int) Math.min(stretch + tail, (long) ret.length() - start);
      if (length > 0) {
        Samples sent = whole ? reference : new Window(reference, start, stretch);
        readings.add(new Reading(sent, new Window(ret, start, length), start));
      }
    }
    if (readings.size() < 2) {
      return readings;
    }
    List<Reading> heard = readings.stream().filter(r -> !isSilent(r)).toList();
    return heard.isEmpty() ? readings : heard;
  }

  /** Whether nothing comes back while the reference lasts. */
  private static boolean isSilent(Reading reading) {
    int length = Math.min(reading.reference().length(), reading.ret().length());
    return Loudness.isSilence(reading.ret().stretch(0, length));
  }

  private List<Integer> loudest(int parts, int part) {
    int step = reference.rate().hertz() / 2;
    List<Integer> all = new ArrayList<>();
    List<Double> energies = new ArrayList<>();
    double most = 0;
    for (int i = 0; i < parts; i++) {
      Loudest loudest = Loudest.in(reference.stretch(i * part, part), stretch, step);
      all.add(i * part + loudest.from());
      energies.add(loudest.energy());
      most = Math.max(most, loudest.energy());
    }
    List<Integer> loud = new ArrayList<>();
    for (int i = 0; i < parts; i++) {
      if (energies.get(i) >= FAINT * most) {
        loud.add(all.get(i));
      }
    }
    return loud;
  }
}
