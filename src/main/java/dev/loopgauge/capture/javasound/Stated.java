package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.RateSource;
import dev.loopgauge.capture.UsualRates;
import dev.loopgauge.capture.alsa.OwnFormats;
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
 * @param source whose counts and rates these are: {@code ANY} for a layer that converts
 */
record Stated(List<Integer> counts, boolean anyBetween, List<SampleRate> rates, RateSource source) {
  /** What stands for "any number": a converting layer, such as ALSA's, states thousands. */
  private static final int ANY_NUMBER = 1_000;

  /** How many channels are shown for such a layer, the number Java Sound itself lists at most. */
  private static final int SHOWN_FOR_ANY = 32;

  Stated {
    counts = List.copyOf(counts);
    rates = List.copyOf(rates);
  }

  /** What a device or a server itself does, from the fewest to the most channels. */
  static Stated own(OwnFormats own) {
    return new Stated(List.of(own.fewest(), own.most()), true, own.rates(), own.source());
  }

  /** Nothing: the device has no lines in this direction. */
  static Stated nothing() {
    return new Stated(List.of(), false, List.of(), RateSource.ANY);
  }

  /**
   * Reads what the formats of a line state. A rate that one of them names is the device's own, as
   * macOS tells it beside formats of any rate; where none names one, the layer takes any.
   */
  static Stated of(List<AudioFormat> formats) {
    List<SampleRate> named =
        formats.stream()
            .map(format -> Math.round(format.getSampleRate()))
            .filter(hertz -> hertz != AudioSystem.NOT_SPECIFIED)
            .distinct()
            .sorted()
            .map(SampleRate::new)
            .toList();
    return named.isEmpty()
        ? counted(formats, UsualRates.ALL, RateSource.ANY)
        : counted(formats, named, RateSource.DEVICE);
  }

  private static Stated counted(
      List<AudioFormat> formats, List<SampleRate> rates, RateSource source) {
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
    return new Stated(List.copyOf(counts), any, rates, source);
  }

  /** Whether it runs at a rate by itself, or takes any. */
  boolean takes(SampleRate rate) {
    return source == RateSource.ANY || rates.contains(rate);
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
