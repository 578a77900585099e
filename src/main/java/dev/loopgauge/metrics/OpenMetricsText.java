package dev.loopgauge.metrics;

import dev.loopgauge.metrics.PathFigures.Delay;
import dev.loopgauge.report.watch.WatchLine;
import io.prometheus.metrics.config.EscapingScheme;
import io.prometheus.metrics.expositionformats.OpenMetricsTextFormatWriter;
import io.prometheus.metrics.model.snapshots.CounterSnapshot;
import io.prometheus.metrics.model.snapshots.CounterSnapshot.CounterDataPointSnapshot;
import io.prometheus.metrics.model.snapshots.GaugeSnapshot;
import io.prometheus.metrics.model.snapshots.GaugeSnapshot.GaugeDataPointSnapshot;
import io.prometheus.metrics.model.snapshots.Labels;
import io.prometheus.metrics.model.snapshots.MetricSnapshots;
import io.prometheus.metrics.model.snapshots.Unit;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;

/**
 * Figures as OpenMetrics 1.0 text (openmetrics.io): gauges end in their unit, counters in {@code
 * _total}, the text in {@code # EOF}. A figure that isn't known now is left out.
 */
final class OpenMetricsText {
  /** The content type. */
  static final String TYPE = OpenMetricsTextFormatWriter.CONTENT_TYPE;

  private static final String PATH = "path";

  private OpenMetricsText() {}

  /** All paths, in UTF-8. */
  static byte[] of(List<PathFigures> paths) throws IOException {
    MetricSnapshots all =
        MetricSnapshots.of(
            seconds(
                "delay",
                "Delay of the path that is read now; left out where none is.",
                paths,
                path -> path.delay().map(Delay::seconds)),
            seconds(
                "delay_uncertainty",
                "Expanded uncertainty (k = 2) of that delay.",
                paths,
                path -> path.delay().map(Delay::uncertaintySeconds)),
            seconds(
                "delay_age",
                "Time since a delay was last read; left out where none ever was.",
                paths,
                PathFigures::ageSeconds),
            dropouts(paths),
            events(paths));
    ByteArrayOutputStream text = new ByteArrayOutputStream();
    OpenMetricsTextFormatWriter.create().write(text, all, EscapingScheme.ALLOW_UTF8);
    return text.toByteArray();
  }

  private static GaugeSnapshot seconds(
      String name,
      String help,
      List<PathFigures> paths,
      Function<PathFigures, Optional<Double>> value) {
    GaugeSnapshot.Builder gauge =
        GaugeSnapshot.builder()
            .name("loopgauge_path_" + name + "_seconds")
            .unit(Unit.SECONDS)
            .help(help);
    for (PathFigures path : paths) {
      value
          .apply(path)
          .ifPresent(
              seconds ->
                  gauge.dataPoint(
                      GaugeDataPointSnapshot.builder()
                          .labels(Labels.of(PATH, path.path()))
                          .value(seconds)
                          .build()));
    }
    return gauge.build();
  }

  private static CounterSnapshot dropouts(List<PathFigures> paths) {
    CounterSnapshot.Builder counter =
        CounterSnapshot.builder()
            .name("loopgauge_path_dropouts")
            .help("How often sound did not come back.");
    for (PathFigures path : paths) {
      counter.dataPoint(
          count(Labels.of(PATH, path.path()), path.events().get(WatchLine.Event.LOST_SOUND)));
    }
    return counter.build();
  }

  private static CounterSnapshot events(List<PathFigures> paths) {
    CounterSnapshot.Builder counter =
        CounterSnapshot.builder()
            .name("loopgauge_path_events")
            .help("How many events of each kind have started.");
    for (PathFigures path : paths) {
      path.events()
          .forEach(
              (kind, count) ->
                  counter.dataPoint(
                      count(Labels.of(PATH, path.path(), "event", label(kind)), count)));
    }
    return counter.build();
  }

  /** As in the JSON lines. */
  private static String label(WatchLine.Event kind) {
    return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static CounterDataPointSnapshot count(Labels labels, long count) {
    return CounterDataPointSnapshot.builder().labels(labels).value((double) count).build();
  }
}
