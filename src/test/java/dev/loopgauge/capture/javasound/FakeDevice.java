package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.RateSource;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntUnaryOperator;
import java.util.function.Predicate;

/** A device that states what it is told to and opens what it is told to; it keeps the formats. */
final class FakeDevice implements SoundDevice {
  private final String name;
  private final Stated sends;
  private final Stated returns;
  private final Predicate<LineFormat> opens;
  private final FakeCard card = new FakeCard(10, 1);
  private IntUnaryOperator takenBuffer = IntUnaryOperator.identity();
  private boolean alone;
  private int asked;
  final List<LineFormat> opened = new ArrayList<>();

  /** A device of one rate, 48 kHz, with every channel count up to these. */
  FakeDevice(String name, int sends, int returns, Predicate<LineFormat> opens) {
    this.name = name;
    this.sends = upTo(sends);
    this.returns = upTo(returns);
    this.opens = opens;
  }

  /** The same device where the system tells what it does by itself. */
  FakeDevice running(Stated itself) {
    return new FakeDevice(name, itself, itself, opens);
  }

  private FakeDevice(String name, Stated sends, Stated returns, Predicate<LineFormat> opens) {
    this.name = name;
    this.sends = sends;
    this.returns = returns;
    this.opens = opens;
  }

  private static Stated upTo(int channels) {
    return channels == 0
        ? Stated.nothing()
        : new Stated(List.of(1, channels), true, List.of(new SampleRate(48_000)), RateSource.ANY);
  }

  /** Takes another buffer than the one it is asked for, without a word. */
  FakeDevice takingBuffer(int frames) {
    takenBuffer = asked -> frames;
    return this;
  }

  /** Is nobody else's while it is open, and is opened to be asked what it does. */
  FakeDevice toBeHadAlone() {
    alone = true;
    return this;
  }

  /** How often it was asked what it does. */
  int asked() {
    return asked;
  }

  @Override
  public boolean alone() {
    return alone;
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public boolean has(Direction direction) {
    return stated(direction).most() > 0;
  }

  @Override
  public Stated stated(Direction direction) {
    asked++;
    return direction == Direction.SEND ? sends : returns;
  }

  @Override
  public Optional<PcmLine> open(Direction direction, LineFormat format) {
    if (!opens.test(format)) {
      return Optional.empty();
    }
    opened.add(format);
    return Optional.of(
        card.line(direction, format.channels(), takenBuffer.applyAsInt(format.bufferFrames())));
  }
}
