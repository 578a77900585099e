package dev.loopgauge.capture.alsa;

import dev.loopgauge.capture.RateSource;
import dev.loopgauge.signal.SampleRate;
import java.util.List;

/**
 * What a device does by itself in one direction.
 *
 * @param fewest the fewest channels that it opens with
 * @param most the most
 * @param rates those usual ones that it takes, lowest first, at least one
 * @param source whose rates these are: {@code ANY} where something converts all the same
 */
public record OwnFormats(int fewest, int most, List<SampleRate> rates, RateSource source) {
  /** Copies the list. */
  public OwnFormats {
    rates = List.copyOf(rates);
  }
}
