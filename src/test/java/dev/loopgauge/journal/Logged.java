package dev.loopgauge.journal;

import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Entries of an invented show. */
final class Logged {
  static final SampleRate RATE = new SampleRate(48_000);

  static final String CHAIN =
      """
      sample-rate: 48000
      block-size: 64
      stages:
        desk: { samples: 40, tolerance-samples: 3 }
        host-blocks: { blocks: 2 }
        limiter: { samples: 240 }
      paths:
        vocal: { listener: house, stages: [desk, host-blocks, limiter] }
        monitor: { listener: in-ear, stages: [desk] }
      """;

  private static final Instant FIRST = Instant.parse("2026-05-01T18:00:00Z");

  private Logged() {}

  /** A measurement on a day, counted from 0. */
  static Heading heading(double day, String show, When when, String path, LoggedDelay delay) {
    return heading(day, show, when, path, Optional.of(delay));
  }

  /** A measurement without a trusted number. */
  static Heading refused(double day, String show, When when, String path) {
    return heading(day, show, when, path, Optional.empty());
  }

  private static Heading heading(
      double day, String show, When when, String path, Optional<LoggedDelay> delay) {
    Instant at = FIRST.plusMillis(Math.round(day * 86_400_000));
    return new Heading(
        new UUID(Double.doubleToLongBits(day), path.hashCode()),
        ZonedDateTime.ofInstant(at, ZoneId.of("Europe/Lisbon")),
        show,
        when,
        Optional.of(path),
        delay.isPresent() ? "measured" : "not-trustworthy",
        Optional.empty(),
        delay,
        Optional.empty());
  }

  static LoggedDelay delay(double samples, double uncertainty) {
    return delay(samples, uncertainty, RATE);
  }

  static LoggedDelay delay(double samples, double uncertainty, SampleRate rate) {
    return new LoggedDelay(new Latency(samples, rate), uncertainty);
  }

  /** An entry with the chain file of the show. */
  static Entry entry(Heading heading, int blockSize, String chain, Map<String, String> setup) {
    return new Entry(
        heading,
        Optional.empty(),
        setup,
        "{}",
        Optional.of(new ChainText("rig.yaml", chain)),
        Optional.of(new SoundCard("jack", "rig", "rig", RATE, blockSize)),
        Optional.empty(),
        "0.1.0");
  }
}
