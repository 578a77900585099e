package dev.loopgauge.capture.javasound;

import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.TreeSet;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;

/**
 * What a device states about one direction.
 *
 * @param counts the channel counts it can be opened with, lowest first; none when it has no lines
 * @param anyBetween whether every count between the lowest and the highest will do
 * @param rates the usual rates that it states, lowest first
 */
record Stated(List<Integer> counts, boolean anyBetween, List<SampleRate> rates) {
  /** What stands for "any number": a converting layer, such as ALSA's, states thousands. */
  private static final int ANY_NUMBER = 1_000;

  /** How many channels are shown for such a layer, the number Java Sound itself lists at most. */
  private static final int SHOWN_FOR_ANY = 32;

  Stated {
    counts = List.copyOf(counts);
    rates = List.copyOf(rates);
  }

  /** Nothing: the device has no lines in this direction. */
  static Stated nothing() {
    return new Stated(List.of(), false, List.of());
  }

  /** Reads the channel counts out of the formats that a line states. */
  static Stated of(List<AudioFormat> formats, List<SampleRate> rates) {
    TreeSet<Integer> counts = new TreeSet<>();
    boolean any = false;
    for (AudioFormat format : formats) {
      if (format.getChannels() == AudioSystem.NOT_SPECIFIED) {
        any = true;
      } else {
        counts.add(format.getChannels());
      }
    }
    if (any && counts.isEmpty()) {
      counts.addAll(List.of(1, SHOWN_FOR_ANY));
    }
    return new Stated(List.copyOf(counts), any, rates);
  }

  /** The highest channel that can be asked for, 0 for none. */
  int most() {
    return counts.isEmpty() ? 0 : counts.get(counts.size() - 1);
  }

  /** The number of channels to show. */
  int shown() {
    return most() >= ANY_NUMBER ? SHOWN_FOR_ANY : most();
  }

  /**
   * The channel counts worth trying to reach a channel that it has, best first. Two or more are
   * preferred: a single channel may be spread over all that the device has.
   */
  List<Integer> countsFor(int highest) {
    if (anyBetween) {
      int several = Math.max(highest, Math.max(2, counts.get(0)));
      return several <= most() ? List.of(several) : List.of(most());
    }
    List<Integer> enough = counts.stream().filter(n -> n >= highest).toList();
    List<Integer> several = enough.stream().filter(n -> n > 1).toList();
    return several.isEmpty() ? enough : several;
  }
}
