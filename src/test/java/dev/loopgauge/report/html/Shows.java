package dev.loopgauge.report.html;

import dev.loopgauge.journal.ChainText;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.LoggedDelay;
import dev.loopgauge.journal.SoundCard;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Reports of invented shows. */
final class Shows {
  private static final SampleRate RATE = new SampleRate(48_000);
  private static final ZonedDateTime DOORS =
      ZonedDateTime.of(2026, 11, 27, 18, 40, 12, 0, ZoneId.of("Europe/Zurich"));

  private Shows() {}

  /** A theatre that measured all there is, before and after, over a season. */
  static ReportDocument theatre() {
    String name = "Lantern Theatre, Friday";
    List<ReadDocument> readings = new ArrayList<>();
    readings.add(logged(name, When.BEFORE, 0, "vocal-in-ear", Documents.WITHIN));
    readings.add(logged(name, When.BEFORE, 1, "vocal-house", late("595.01")));
    readings.add(logged(name, When.AFTER, 190, "vocal-house", late("723.0184")));
    readings.add(logged(name, When.AFTER, 191, "vocal-in-ear", Documents.WITHIN));
    readings.add(Documents.reading("budget.json", Documents.BUDGET));
    readings.add(Documents.reading("series.json", SERIES));
    readings.add(Documents.reading("track.json", track()));
    readings.add(Documents.reading("soak.json", SOAK));
    readings.add(Documents.reading("pairs.json", PAIRS));
    readings.add(Documents.reading("channels.json", CHANNELS));
    readings.add(Documents.reading("plan.json", PLAN));
    readings.add(Documents.reading("align.json", ALIGNMENT));
    return new ReportDocument(name, "0.1.0", readings, season("vocal-house"), PageLayout.PLAIN);
  }

  /** A festival field that read one path, and another in vain. */
  static ReportDocument field() {
    return new ReportDocument(
        "Meadow stage",
        "0.1.0",
        List.of(
            Documents.reading(
                "delay-tower.json", Documents.WITHIN.replace("vocal-in-ear", "tower")),
            Documents.reading("front-fill.json", Documents.REFUSED),
            Documents.reading("long.json", withLongFigures(Documents.LATE)),
            Documents.reading("budget.json", withLongFigures(Documents.BUDGET))));
  }

  /** Ten seconds late, read to a thousandth of a sample. */
  private static String withLongFigures(String document) {
    return document
        .replace("723.0184", "480723.0184")
        .replace("595", "480595")
        .replace("0.036", "0.001")
        .replace("17.650208", "10017.650208");
  }

  private static String late(String samples) {
    return withResponse(Documents.LATE.replace("723.0184", samples));
  }

  /** A document with the envelope of two arrivals above noise. */
  static String withResponse(String document) {
    String levels =
        IntStream.range(0, 900)
            .mapToObj(i -> String.valueOf(level(400 + i)))
            .collect(Collectors.joining(","));
    return document.replaceFirst(
        "\\}\\s*$",
        ",\"response\":{\"firstSamples\":400,\"stepSamples\":1,\"levelsDb\":[" + levels + "]}}");
  }

  private static double level(int at) {
    double peak = Math.exp(-Math.abs(at - 723) / 6.0);
    double later = 0.24 * Math.exp(-Math.abs(at - 911) / 9.0);
    double noise = 0.001 * (1 + Math.sin(at * 12.9898) * 0.7);
    return Math.rint(2000 * Math.log10(peak + later + noise)) / 100;
  }

  private static List<Heading> season(String path) {
    List<Heading> season = new ArrayList<>();
    for (int show = 0; show < 12; show++) {
      for (When when : List.of(When.BEFORE, When.AFTER)) {
        double samples = show == 7 ? 659.02 : 595 + (show % 5) * 0.01;
        season.add(
            heading(
                "Lantern Theatre, show " + (show + 1),
                when,
                DOORS.minusDays(12 - show).plusHours(when == When.AFTER ? 3 : 0),
                path,
                new LoggedDelay(new Latency(samples, RATE), 0.04)));
      }
    }
    return season;
  }

  private static Heading heading(
      String show, When when, ZonedDateTime at, String path, LoggedDelay delay) {
    return new Heading(
        UUID.nameUUIDFromBytes((show + when + path + at).getBytes(StandardCharsets.UTF_8)),
        at,
        show,
        when,
        Optional.of(path),
        "within-budget",
        Optional.empty(),
        Optional.of(delay),
        Optional.empty());
  }

  /** A document as it stands in the journal, this many minutes after doors. */
  static ReadDocument logged(String show, When when, int minutes, String path, String document) {
    try {
      Map<String, Object> values = Json.read(document);
      Map<String, String> setup = new LinkedHashMap<>();
      setup.put("clock-leader", "stage box");
      setup.put("network-latency", "1 ms");
      return ReadDocument.ofEntry(
          new Entry(
              heading(show, when, DOORS.plusMinutes(minutes), path, delay(values)),
              Optional.of("Curtain in; audience in the front rows only."),
              setup,
              document,
              Optional.of(new ChainText("lantern.yaml", "chain: Lantern\n")),
              Optional.of(new SoundCard("jack", "system", "system", RATE, 64)),
              Optional.empty(),
              "0.1.0"),
          values);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static LoggedDelay delay(Map<String, Object> document) {
    ShownDelay delay = ReadDocument.ofFile("it", document).delay().orElseThrow();
    return new LoggedDelay(new Latency(delay.samples(), RATE), delay.uncertaintySamples());
  }

  /** Twenty-five minutes in which the delay steps up a block and back. */
  static String track() {
    String points =
        IntStream.range(0, 300)
            .mapToObj(
                i ->
                    "{\"atSeconds\":%d,\"delaySamples\":%s,\"uncertaintySamples\":0.6}"
                        .formatted(i * 5, (i >= 80 && i < 180 ? 659 : 595) + (i % 7) / 10.0))
            .collect(Collectors.joining(","));
    return """
        {"schema":1,"command":"analyze","outcome":"measured","windowSeconds":1,
         "windowsLeftOut":0,"clockDriftPpm":0.12,"track":[%s],
         "steps":[{"atSeconds":400,"fromSamples":595.3,"toSamples":659.3,"blocks":1},
                  {"atSeconds":900,"fromSamples":659.3,"toSamples":595.3,"blocks":-1}],
         "findings":[]}
        """
        .formatted(points);
  }

  static final String SERIES =
      """
      {"schema":1,"command":"series","outcome":"fitted",
       "fit":{"blocks":2.00004,"roundedBlocks":2,"fixedSamples":219,"fixedMs":4.5625,
        "residualSamples":0.02,"uncertaintyBlocks":0.0003},
       "readings":[{"blockSize":32,"delayMs":5.896,"fittedMs":5.8958,"outlier":false},
        {"blockSize":64,"delayMs":7.229,"fittedMs":7.2292,"outlier":false},
        {"blockSize":128,"delayMs":9.896,"fittedMs":9.8958,"outlier":false},
        {"blockSize":256,"delayMs":19.25,"fittedMs":15.2292,"outlier":true},
        {"blockSize":512,"delayMs":25.896,"fittedMs":25.8958,"outlier":false},
        {"blockSize":1024,"delayMs":47.229,"fittedMs":47.2292,"outlier":false}],
       "predictions":[],
       "notes":[{"code":"outlier","text":"the reading at 256 lies 4.02 ms off the line",
        "hint":"read it again"}]}
      """;

  static final String SOAK =
      """
      {"schema":1,"command":"measure","outcome":"not-clean","soak":{"askedMinutes":30,
       "heardSeconds":1800.5,"endedBy":null,"takes":900,"dropouts":1,"steps":0,
       "unreadableTakes":0,"failedTakes":0,"longestCleanSeconds":1420.2,"delaySamples":595.02,
       "rangeSamples":0.04,"worst":null,"moments":[{"kind":"dropout","atSeconds":380.3,
       "movedSamples":0,"text":"64 samples were lost"}]},"comparison":null}
      """;

  static final String PAIRS =
      """
      {"schema":1,"command":"analyze","outcome":"measured","sampleRateHz":48000,"pairs":[
       {"from":1,"to":2,"delaySamples":140.25,"uncertaintySamples":0.5,"levelDb":-3,
        "likeness":0.82,"polarity":"normal","findings":[]},
       {"from":1,"to":3,"delaySamples":null,"uncertaintySamples":null,"levelDb":null,
        "likeness":null,"polarity":null,"findings":[]}]}
      """;

  static final String CHANNELS =
      """
      {"schema":1,"command":"analyze","outcome":"not-trustworthy","channels":[
       {"channel":2,"outcome":"measured","measurement":{"sampleRateHz":48000,
        "delaySamples":140.25,"uncertaintySamples":0.052},"findings":[],"comparison":null},
       {"channel":3,"outcome":"not-trustworthy","measurement":null,"findings":[],
        "comparison":null}]}
      """;

  static final String PLAN =
      """
      {"schema":1,"command":"plan","outcome":"planned","choices":[
       {"blockSize":64,"sampleRateHz":48000,"blockMs":1.333333,"paths":[]},
       {"blockSize":32,"sampleRateHz":48000,"blockMs":0.666667,"paths":[]}],
       "limit":{"blockSize":128,"sampleRateHz":48000,"path":"vocal-house","kind":"limit",
        "reachedMs":16.2,"limitMs":15,"overMs":1.2,"rule":"common practice, no source"},
       "droppedOut":[]}
      """;

  static final String ALIGNMENT =
      """
      {"schema":1,"command":"align","outcome":"aligned","step":"samples","mixes":[
       {"name":"front-rows","target":"vocal-house","paths":[
        {"path":"vocal-house","addSamples":0,"addMs":0},
        {"path":"vocal-wedge","addSamples":262,"addMs":5.458333}]}],"conflicts":[]}
      """;
}
