package dev.loopgauge.metrics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.jr.ob.JSON;
import dev.loopgauge.cli.wiring.Adapters;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.Ending;
import dev.loopgauge.job.Person;
import dev.loopgauge.job.StopSign;
import dev.loopgauge.job.kept.KeepChoice;
import dev.loopgauge.job.live.DeviceChoice;
import dev.loopgauge.job.live.RigChoice;
import dev.loopgauge.job.live.Site;
import dev.loopgauge.job.live.WatchJob;
import dev.loopgauge.job.live.WatchRequest;
import dev.loopgauge.outside.NeedsTool;
import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A Prometheus server reads a watch, and learns when its delays are no longer read. */
@NeedsTool("prometheus")
@Timeout(240)
class PrometheusIT {
  private static final String CHAIN =
      """
      chain: Quarry Stage
      sample-rate: 48000
      block-size: 64
      reference: { send: 1, return: 1 }
      stages:
        blocks: { blocks: 2 }
        fixed:  { samples: 100 }
      paths:
        moved: { listener: house, stages: [blocks, fixed], patch: { send: 2, return: 2 } }
        other: { listener: stream, stages: [fixed], patch: { send: 3, return: 3 } }
      """;

  private static final Duration ANSWER = Duration.ofSeconds(20);
  private static final long AGAIN_NANOS = TimeUnit.MILLISECONDS.toNanos(200);

  @TempDir Path folder;
  private final HttpClient client = HttpClient.newHttpClient();
  private final AtomicLong ahead = new AtomicLong();
  private int port;

  @Test
  void prometheusReadsDelaysAndEventsOfAWatch() throws Exception {
    StopSign stop = new StopSign();
    ExecutorService thread = Executors.newSingleThreadExecutor();
    MetricsServer server = MetricsServer.start(0, () -> System.nanoTime() + ahead.get());
    Process prometheus = prometheus(server.address());
    try {
      Future<Answer> watch =
          thread.submit(() -> new WatchJob(request()).run(site(), server.listener(), stop));
      assertEquals(228 / 48_000.0, await("loopgauge_path_delay_seconds", "moved"), 1e-6);
      assertEquals(100 / 48_000.0, await("loopgauge_path_delay_seconds", "other"), 1e-6);
      double uncertainty = await("loopgauge_path_delay_uncertainty_seconds", "moved");
      assertTrue(uncertainty > 0 && uncertainty < 1e-4, "" + uncertainty);
      String events = "loopgauge_path_events_total{event=\"polarity\",path=\"%s\"}";
      await(events.formatted("moved"), value -> value.equals(Optional.of(1.0)));
      assertEquals(Optional.of(0.0), ask(events.formatted("other")));
      assertEquals(Optional.of(0.0), ask("loopgauge_path_dropouts_total{path=\"moved\"}"));
      stop.stop();
      assertEquals(Ending.OUTSIDE, watch.get(60, TimeUnit.SECONDS).ending());
      ahead.addAndGet(WatchFigures.CURRENT_NANOS);
      await("loopgauge_path_delay_seconds{path=\"other\"}", Optional::isEmpty);
      assertTrue(await("loopgauge_path_delay_age_seconds", "other") > 5);
    } finally {
      stop.stop();
      thread.shutdownNow();
      prometheus.destroyForcibly().waitFor();
      server.close();
    }
  }

  private Site site() {
    return new Site(Adapters.of(List::of), Person.nobody(), Map.of());
  }

  private WatchRequest request() throws IOException {
    return new WatchRequest(
        Files.writeString(folder.resolve("quarry.yaml"), CHAIN),
        Optional.empty(),
        new DeviceChoice(
            Optional.of("simulated"),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty()),
        2,
        1,
        Optional.empty(),
        new RigChoice(List.of("moved:inverted@10"), 1),
        KeepChoice.NONE);
  }

  private Process prometheus(String target) throws IOException {
    URI address = URI.create(target);
    try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      port = free.getLocalPort();
    }
    String configuration =
        """
        scrape_configs:
          - job_name: loopgauge
            scrape_interval: 500ms
            scrape_timeout: 500ms
            static_configs: [{ targets: ['localhost:%d'] }]
        """
            .formatted(address.getPort());
    Path file = Files.writeString(folder.resolve("prometheus.yml"), configuration);
    return new ProcessBuilder(
            "prometheus",
            "--config.file=" + file,
            "--storage.tsdb.path=" + folder.resolve("data"),
            "--web.listen-address=127.0.0.1:" + port)
        .redirectOutput(Redirect.DISCARD)
        .redirectError(Redirect.DISCARD)
        .start();
  }

  private double await(String name, String path) throws Exception {
    return await(name + "{path=\"" + path + "\"}", Optional::isPresent).orElseThrow();
  }

  /** Asks again until the answer fits; the test's own time limit bounds it. */
  private Optional<Double> await(String query, Predicate<Optional<Double>> fits) throws Exception {
    while (true) {
      try {
        Optional<Double> value = ask(query);
        if (fits.test(value)) {
          return value;
        }
      } catch (IOException e) {
        // It has not begun to answer.
      }
      LockSupport.parkNanos(AGAIN_NANOS);
      if (Thread.interrupted()) {
        throw new InterruptedException(query);
      }
    }
  }

  /** The value of a query that gives one or none. */
  private Optional<Double> ask(String query) throws IOException, InterruptedException {
    String encoded = URLEncoder.encode(query, StandardCharsets.UTF_8);
    URI address = URI.create("http://127.0.0.1:" + port + "/api/v1/query?query=" + encoded);
    HttpRequest request = HttpRequest.newBuilder(address).timeout(ANSWER).build();
    String answer = client.send(request, BodyHandlers.ofString()).body();
    if (!answer.startsWith("{")) {
      throw new IOException(answer);
    }
    Map<?, ?> data = (Map<?, ?>) JSON.std.mapFrom(answer).get("data");
    List<?> result = (List<?>) data.get("result");
    return result.stream()
        .findFirst()
        .map(series -> (List<?>) ((Map<?, ?>) series).get("value"))
        .map(value -> Double.parseDouble((String) value.get(1)));
  }
}
