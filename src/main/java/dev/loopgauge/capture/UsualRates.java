package dev.loopgauge.capture;

import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.stream.Stream;

/** The rates that converters commonly run at (common practice, no source). */
public final class UsualRates {
  /** Lowest first. */
  public static final List<SampleRate> ALL =
      Stream.of(44_100, 48_000, 88_200, 96_000, 176_400, 192_000).map(SampleRate::new).toList();

  private UsualRates() {}
}
