package dev.loopgauge.capture.javasound;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.TimedCall;
import dev.loopgauge.signal.SampleRate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Finds a format that the lines of a session open with. A platform only says yes or no to a format,
 * so it is tried out; when nothing opens, more is tried to find out why.
 */
final class Opening {
  /** 24 bits are what converters deliver; 16 are better than a card's odd 32. */
  private static final List<Integer> PREFERRED_BITS = List.of(24, 16, 32);

  /**
   * Large, because nothing here waits for a buffer's length, and powers of two, because ALSA's JACK
   * plugin refuses many others.
   */
  private static final List<Integer> PREFERRED_BUFFERS = List.of(16_384, 32_768, 8_192, 4_096);

  private static final TimedCall EXPLAIN = new TimedCall("The device", 5, "Try again.");

  private final Optional<LineEnd> output;
  private final LineEnd input;
  private final List<SampleRate> rates;
  private final List<Integer> buffers;

  private Opening(Optional<LineEnd> output, LineEnd input, SessionRequest request)
      throws CaptureException {
    this.output = output;
    this.input = input;
    this.rates =
        RateChoice.of(request.rate(), Stream.concat(Stream.of(input), output.stream()).toList());
    this.buffers =
        request.bufferSamples() == 0 ? PREFERRED_BUFFERS : List.of(request.bufferSamples());
  }

  /**
   * Opens what was asked for.
   *
   * @throws CaptureException when there is no such device or channel, or nothing opens
   */
  static OpenLines open(Devices devices, SessionRequest request) throws CaptureException {
    Optional<LineEnd> output = Optional.empty();
    if (!request.sends().isEmpty()) {
      output = Optional.of(LineEnd.of(devices, request.output(), Direction.SEND, request.sends()));
    }
    LineEnd input = LineEnd.of(devices, request.input(), Direction.RETURN, request.returns());
    return new Opening(output, input, request).open();
  }

  private OpenLines open() throws CaptureException {
    LineEnd refusing = input;
    for (SampleRate rate : rates) {
      Optional<PcmLine> in = line(input, rate, buffers);
      if (in.isEmpty()) {
        continue;
      }
      Optional<PcmLine> out = output.flatMap(end -> line(end, rate, buffers));
      if (out.isPresent() || output.isEmpty()) {
        return new OpenLines(out, in.get(), rate, source(), alone());
      }
      in.get().close();
      refusing = output.get();
    }
    throw explained(refusing);
  }

  private boolean alone() {
    return Stream.concat(Stream.of(input), output.stream()).anyMatch(end -> end.device().alone());
  }

  /** What is known of both ends is what is known of the less known one. */
  private RateSource source() {
    return Stream.concat(Stream.of(input), output.stream())
        .map(end -> end.stated().source())
        .max(Comparator.naturalOrder())
        .orElseThrow();
  }

  private static Optional<PcmLine> line(LineEnd end, SampleRate rate, List<Integer> buffers) {
    for (int buffer : buffers) {
      for (int channels : end.channelCounts()) {
        for (int bits : PREFERRED_BITS) {
          Optional<PcmLine> line =
              end.device().open(end.direction(), new LineFormat(rate, bits, channels, buffer));
          if (line.isPresent() && takes(line.get(), buffer, buffers)) {
            return line;
          }
          line.ifPresent(PcmLine::close);
        }
      }
    }
    return Optional.empty();
  }

  /** A device that takes another buffer than the one asked for must not do so in silence. */
  private static boolean takes(PcmLine line, int buffer, List<Integer> buffers) {
    return buffers.size() > 1 || line.bufferFrames() == buffer;
  }

  /** Trying out what would open takes time of its own, and may fail where opening just did. */
  private CaptureException explained(LineEnd end) {
    try {
      return EXPLAIN.of(() -> whyNot(end), late -> {});
    } catch (CaptureException e) {
      return busy(end);
    }
  }

  private CaptureException whyNot(LineEnd end) {
    if (!buffers.equals(PREFERRED_BUFFERS) && opensAtOne(end, rates)) {
      return wrongBuffer(end);
    }
    if (end.direction() == Direction.SEND && opensAtOne(end, rates)) {
      return notTogether(end);
    }
    List<String> others =
        RateChoice.PREFERRED.stream()
            .filter(rate -> !rates.contains(rate) && end.stated().takes(rate))
            .filter(rate -> opensAtOne(end, List.of(rate)))
            .map(rate -> String.valueOf(rate.hertz()))
            .toList();
    return others.isEmpty() ? busy(end) : wrongRate(end, String.join(", ", others));
  }

  private CaptureException wrongBuffer(LineEnd end) {
    return new CaptureException(
        Kind.UNSUPPORTED_FORMAT,
        "\"%s\" doesn't open with a buffer of %d samples."
            .formatted(end.device().name(), buffers.get(0)),
        "Leave the buffer size to the program, or try 8192 or 16384.");
  }

  private CaptureException notTogether(LineEnd end) {
    return new CaptureException(
        Kind.BUSY,
        "\"%s\" and \"%s\" open one by one, but not together at one rate."
            .formatted(end.device().name(), input.device().name()),
        "Play and record through the same sound card, or give a rate that both run at.");
  }

  private CaptureException wrongRate(LineEnd end, String others) {
    return new CaptureException(
        Kind.UNSUPPORTED_FORMAT,
        "\"%s\" doesn't run at %d Hz; it opens at %s Hz."
            .formatted(end.device().name(), rates.get(0).hertz(), others),
        "Ask for a rate at which it opens, or set the card to this one.");
  }

  private static CaptureException busy(LineEnd end) {
    return new CaptureException(
        Kind.BUSY,
        "\"%s\" is there, but doesn't open to %s."
            .formatted(end.device().name(), end.direction().purpose()),
        "Close other programs that use it, and see that it is still connected.");
  }

  private static boolean opensAtOne(LineEnd end, List<SampleRate> rates) {
    for (SampleRate rate : rates) {
      Optional<PcmLine> line = line(end, rate, PREFERRED_BUFFERS);
      line.ifPresent(PcmLine::close);
      if (line.isPresent()) {
        return true;
      }
    }
    return false;
  }
}
