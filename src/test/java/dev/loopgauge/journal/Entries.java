package dev.loopgauge.journal;

import dev.loopgauge.report.form.Json;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.verify.verdict.Judgement;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.UUID;

/** Entries for tests. */
public final class Entries {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final ZoneId ZONE = ZoneId.of("Europe/Lisbon");
  private static final Instant FIRST = Instant.parse("2026-05-01T18:00:00.125Z");

  private static final String[] NASTY = {
    "<script>alert('x')</script>",
    "\"; DROP TABLE entry; --",
    "a\u202Eb\u200F",
    "\u0000\u0001\t\r\n\u001B[31m",
    "half \uD83D a pair",
    "\uDC00 the other half",
    "\uD83C\uDFB7 whole",
    "back\\slash \\u0000 \\n",
    "'single' \"double\" `back`",
    "e\u0301 \u00E9 \u4E2D\u6587",
    "=1+1",
    "line\none\ttab"
  };

  private Entries() {}

  /** A heading of the n-th minute. */
  public static Heading heading(long n, String show, When when, String path, double samples) {
    return new Heading(
        new UUID(0x1234_5678_9abc_4000L, 0x8000_0000_0000_0000L + n),
        ZonedDateTime.ofInstant(FIRST.plusSeconds(60 * n), ZONE),
        show,
        when,
        Optional.of(path),
        "measured",
        Optional.of(Judgement.GOOD),
        Optional.of(new LoggedDelay(new Latency(samples, RATE), 0.04)),
        Optional.empty());
  }

  /** A full entry under a heading. */
  public static Entry entry(Heading heading) {
    Map<String, String> setup = new LinkedHashMap<>();
    setup.put("clock-leader", "desk");
    setup.put("network-latency", "1 ms");
    return new Entry(
        heading,
        Optional.of("all as planned"),
        setup,
        document(heading),
        Optional.of(new ChainText("hall.yaml", "chain: Hall\n")),
        Optional.of(new SoundCard("jack", "rig", "rig", RATE, 64)),
        Optional.of(new KeptCapture("a.wav.gz", "00")),
        "0.1.0");
  }

  /** The document that such a heading is of. */
  private static String document(Heading heading) {
    String measurement =
        heading
            .delay()
            .map(
                logged ->
                    "{\"sampleRateHz\":%d,\"delaySamples\":%s,\"uncertaintySamples\":%s}"
                        .formatted(
                            logged.delay().rate().hertz(),
                            logged.delay().samples(),
                            logged.uncertaintySamples()))
            .orElse("null");
    String verdict =
        heading
            .standing()
            .map(standing -> "\"verdict\":{\"standing\":\"%s\"},".formatted(standing.label()))
            .orElse("");
    return "{\"schema\":1,\"command\":\"measure\",\"outcome\":\"%s\",%s\"measurement\":%s}"
        .formatted(heading.outcome(), verdict, measurement);
  }

  /** The plain n-th entry. */
  public static Entry entry(long n) {
    return entry(heading(n, "Harbour, Friday", When.BEFORE, "vocal-house", 595));
  }

  /** The same with a correction of another. */
  public static Entry correcting(Entry entry, UUID corrected) {
    Heading h = entry.heading();
    return with(
        entry,
        new Heading(
            h.id(),
            h.at(),
            h.show(),
            h.when(),
            h.path(),
            h.outcome(),
            h.standing(),
            h.delay(),
            Optional.of(corrected)));
  }

  private static Entry with(Entry entry, Heading heading) {
    return new Entry(
        heading,
        entry.note(),
        entry.setup(),
        entry.document(),
        entry.chain(),
        entry.card(),
        entry.capture(),
        entry.toolVersion());
  }

  /** The n-th entry with anything in its texts and any of its parts missing. */
  public static Entry nasty(long n, SplittableRandom random) {
    Heading heading =
        new Heading(
            new UUID(random.nextLong(), random.nextLong()),
            ZonedDateTime.ofInstant(
                FIRST.plusMillis(n * 977), ZoneId.of(random.nextBoolean() ? "UTC" : "+05:45")),
            "x" + text(random),
            List.of(When.BEFORE, When.DURING, When.AFTER).get(random.nextInt(3)),
            maybe(random, text(random)),
            "not-trustworthy",
            standing(n),
            maybe(random, new LoggedDelay(new Latency(random.nextGaussian() * 1e4, RATE), 1e-7)),
            Optional.empty());
    Map<String, String> setup = new LinkedHashMap<>();
    for (int i = random.nextInt(4); i > 0; i--) {
      setup.put(text(random), text(random));
    }
    return new Entry(
        heading,
        maybe(random, text(random)),
        setup,
        strange(random),
        maybe(random, new ChainText(text(random), text(random)).withoutFolder()),
        maybe(random, new SoundCard(text(random), text(random), text(random), RATE, 64)),
        maybe(random, new KeptCapture(text(random), text(random))),
        text(random));
  }

  /** A document of a command that nobody knows. */
  private static String strange(SplittableRandom random) {
    Map<String, Object> document = new LinkedHashMap<>();
    document.put("command", "x" + text(random));
    document.put("outcome", "not-trustworthy");
    document.put("text", text(random));
    return Json.line(document);
  }

  /** Each, and none. */
  private static Optional<Judgement> standing(long n) {
    return Arrays.stream(Judgement.values()).skip(n % 5).findFirst();
  }

  private static <T> Optional<T> maybe(SplittableRandom random, T value) {
    return random.nextBoolean() ? Optional.of(value) : Optional.empty();
  }

  private static String text(SplittableRandom random) {
    StringBuilder text = new StringBuilder();
    for (int i = random.nextInt(4); i > 0; i--) {
      text.append(NASTY[random.nextInt(NASTY.length)]);
    }
    return text.toString();
  }
}
