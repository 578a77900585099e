package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The rates at which a session may open: those that each device runs at by itself, where the system
 * tells them. At any other one a layer of the system would convert, and a converter may be wrong by
 * a thousandth.
 */
final class RateChoice {
  /** The rates to try when none was asked for, best first. */
  static final List<SampleRate> PREFERRED =
      Stream.of(48_000, 44_100, 96_000, 88_200, 192_000, 176_400).map(SampleRate::new).toList();

  private RateChoice() {}

  /**
   * The rates to try, best first.
   *
   * @throws CaptureException when a device doesn't run at the rate that was asked for, or two
   *     devices share no rate
   */
  static List<SampleRate> of(Optional<SampleRate> asked, List<LineEnd> ends)
      throws CaptureException {
    for (LineEnd end : ends) {
      if (asked.isPresent() && !end.stated().takes(asked.get())) {
        throw notItsOwn(end, asked.get());
      }
    }
    if (asked.isPresent()) {
      return List.of(asked.get());
    }
    List<SampleRate> shared =
        Stream.concat(
                PREFERRED.stream(), ends.stream().flatMap(end -> end.stated().rates().stream()))
            .distinct()
            .filter(rate -> ends.stream().allMatch(end -> end.stated().takes(rate)))
            .toList();
    if (shared.isEmpty()) {
      throw noneShared(ends);
    }
    return shared;
  }

  private static CaptureException notItsOwn(LineEnd end, SampleRate asked) {
    return new CaptureException(
        Kind.UNSUPPORTED_FORMAT,
        "\"%s\" doesn't run at %d Hz; it runs at %s Hz."
            .formatted(end.device().name(), asked.hertz(), listed(end)),
        "Leave the sample rate out, or set the card or the server to this one.");
  }

  private static CaptureException noneShared(List<LineEnd> ends) {
    return new CaptureException(
        Kind.UNSUPPORTED_FORMAT,
        ends.stream()
            .map(end -> "\"%s\" runs at %s Hz".formatted(end.device().name(), listed(end)))
            .collect(Collectors.joining(", ", "", ": there is no rate for both.")),
        "Play and record through the same sound card, or set both to one rate.");
  }

  private static String listed(LineEnd end) {
    return end.stated().rates().stream()
        .map(rate -> String.valueOf(rate.hertz()))
        .collect(Collectors.joining(", "));
  }
}
