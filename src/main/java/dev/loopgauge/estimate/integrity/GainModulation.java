package dev.loopgauge.estimate.integrity;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Tells whether the path's level moves while it plays, as automatic gain, noise suppression, a
 * compressor or a gate make it.
 *
 * <p>In segments of about 50 ms the return is projected on what the fitted path makes of the
 * reference: a steady path gives 1 each time. Only segments count that noise, and a room's
 * reverberation, leave certain. Within one sweep the fit takes a moving level for a frequency
 * response, so there only a jump is told ({@link PhaseJump}).
 */
public final class GainModulation {
  /** How many windows make a stretch. */
  private static final int TOGETHER = 10;

  /** How many independent values a stretch has at least: 50 ms of a band of 100 Hz. */
  private static final double INDEPENDENT = 10;

  /** The standard uncertainty up to which a stretch counts. */
  private static final double CERTAIN = 0.08;

  /**
   * Segments whose reference or arrivals are quieter than this against the mean, as energy, tell
   * nothing: 50 dB. A path that was fitted to a few tones may ring where nothing was sent.
   */
  private static final double FAINT = 1e-5;

  private static final int FEWEST = 10;

  /** The share of segments that may stand out on either side. */
  private static final double OUTSIDE = 0.1;

  /** Moving by less than this is a room's doing, in dB. */
  private static final double LEAST_DB = 4;

  /** More than this is told as this: the return is then shut off, in dB. */
  private static final double MOST_DB = 40;

  private GainModulation() {}

  /** By how much the level moves, in dB, if so. */
  public static OptionalDouble of(List<LostSound> readings) {
    List<LostSound.Heard> windows = new ArrayList<>();
    for (LostSound reading : readings) {
      windows.addAll(reading.windows());
    }
    if (windows.isEmpty()) {
      return OptionalDouble.empty();
    }
    LostSound.Heard all = LostSound.Heard.sum(windows);
    double arrivals = FAINT * TOGETHER * all.arrivals() / windows.size();
    double sent = FAINT * TOGETHER * all.sent() / windows.size();
    List<Double> levels = new ArrayList<>();
    for (LostSound reading : readings) {
      addLevels(reading.windows(), arrivals, sent, levels);
    }
    if (levels.size() < FEWEST) {
      return OptionalDouble.empty();
    }
    Collections.sort(levels);
    double low = levels.get((int) (OUTSIDE * levels.size()));
    double high = levels.get((int) ((1 - OUTSIDE) * levels.size()));
    double moved = high <= 0 ? 0 : Math.min(MOST_DB, -20 * Math.log10(Math.max(low, 0) / high));
    return moved > LEAST_DB ? OptionalDouble.of(moved) : OptionalDouble.empty();
  }

  private static void addLevels(
      List<LostSound.Heard> windows, double arrivals, double sent, List<Double> levels) {
    for (int from = 0; from + TOGETHER <= windows.size(); from += TOGETHER) {
      LostSound.Heard sum = LostSound.Heard.sum(windows.subList(from, from + TOGETHER));
      double level = sum.product() / sum.arrivals();
      double other = Math.max(0, sum.all() - level * sum.product());
      boolean sounds = sum.arrivals() > arrivals && sum.sent() > sent;
      if (sounds && other < CERTAIN * CERTAIN * INDEPENDENT * sum.arrivals()) {
        levels.add(level);
      }
    }
  }
}
