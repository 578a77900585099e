package dev.loopgauge.capture.javasound;

import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** A device that states what it is told to and opens what it is told to; it keeps the formats. */
final class FakeDevice implements SoundDevice {
  private final String name;
  private final Stated sends;
  private final Stated returns;
  private final Predicate<LineFormat> opens;
  private final FakeCard card = new FakeCard(10, 1);
  final List<LineFormat> opened = new ArrayList<>();

  /** A device of one rate, 48 kHz, with every channel count up to these. */
  FakeDevice(String name, int sends, int returns, Predicate<LineFormat> opens) {
    this.name = name;
    this.sends = upTo(sends);
    this.returns = upTo(returns);
    this.opens = opens;
  }

  private static Stated upTo(int channels) {
    return channels == 0
        ? Stated.nothing()
        : new Stated(List.of(1, channels), true, List.of(new SampleRate(48_000)));
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public Stated stated(Direction direction) {
    return direction == Direction.SEND ? sends : returns;
  }

  @Override
  public Optional<PcmLine> open(Direction direction, LineFormat format) {
    if (!opens.test(format)) {
      return Optional.empty();
    }
    opened.add(format);
    return Optional.of(card.line(direction, format.channels()));
  }
}
