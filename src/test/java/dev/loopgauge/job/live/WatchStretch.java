package dev.loopgauge.job.live;

import com.sun.management.OperatingSystemMXBean;
import dev.loopgauge.audioserver.AudioServer;
import dev.loopgauge.audioserver.AudioServer.Cycles;
import dev.loopgauge.audioserver.DelayClient;
import dev.loopgauge.audioserver.DelayLine;
import dev.loopgauge.audioserver.ProgrammeClient;
import dev.loopgauge.capture.jack.JackBackend;
import dev.loopgauge.cli.wiring.Adapters;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.Person;
import dev.loopgauge.job.StopSign;
import dev.loopgauge.job.WatchListener;
import dev.loopgauge.report.watch.WatchLine;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * A watch over eight paths of a real audio server for minutes or hours, and what it takes of the
 * machine. Started by itself ({@code java ... WatchStretch MINUTES}) it takes no turn at the
 * server.
 */
@SuppressWarnings("try") // The clients only have to run.
final class WatchStretch {
  static final int PATHS = 8;

  private WatchStretch() {}

  /**
   * What the process held at a time.
   *
   * @param seconds since the watch began
   * @param heapBytes what is left after collecting rubbish
   * @param handles open files of all kinds
   * @param ports of this process on the audio server
   * @param cpuSeconds the processor time so far
   */
  record Held(
      double seconds, long heapBytes, int threads, int handles, int ports, double cpuSeconds) {
    @Override
    public String toString() {
      return String.format(
          Locale.ROOT,
          "%6.0f s: heap %.1f MB, %d threads, %d handles, %d ports, %.1f s of processor time",
          seconds,
          heapBytes / 1e6,
          threads,
          handles,
          ports,
          cpuSeconds);
    }

    /** Which share of one core was used since another time. */
    double coresSince(Held earlier) {
      return (cpuSeconds - earlier.cpuSeconds) / (seconds - earlier.seconds);
    }
  }

  /** All that was seen, and what the watch came to. */
  record Seen(List<Held> held, int looks, List<WatchLine> events, Answer answer) {}

  private static String chain() {
    StringBuilder chain =
        new StringBuilder(
            """
            chain: Quarry Stage
            sample-rate: 48000
            block-size: 64
            reference: { send: 1, return: 1 }
            stages:
            """);
    StringBuilder paths = new StringBuilder("paths:\n");
    for (int i = 1; i <= PATHS; i++) {
      chain.append("  s%d: { samples: %d }%n".formatted(i, delay(i)));
      paths.append(
          "  p%1$d: { listener: house, stages: [s%1$d], patch: { send: %2$d, return: %2$d } }%n"
              .formatted(i, i + 1));
    }
    return chain.append(paths).toString();
  }

  private static int delay(int path) {
    return 37 * path * path;
  }

  /** Watches for so long, and looks at the process each time. */
  static Seen run(double minutes, double everySeconds, Path folder) throws Exception {
    List<DelayLine> lines = new ArrayList<>(List.of(DelayLine.of(0)));
    List<String> inputs = new ArrayList<>(List.of("rig:in_1"));
    for (int i = 1; i <= PATHS; i++) {
      lines.add(DelayLine.of(delay(i)));
      inputs.add("rig:in_" + (i + 1));
    }
    ExecutorService thread = Executors.newSingleThreadExecutor();
    StopSign stop = new StopSign();
    Ears ears = new Ears();
    Site site = new Site(Adapters.of(() -> List.of(new JackBackend())), Person.nobody(), Map.of());
    Path file = Files.writeString(folder.resolve("quarry.yaml"), chain());
    WatchRequest request = HeardWatch.request(file);
    try (AudioServer server = AudioServer.start(Cycles.STRETCH, 48_000, 1024);
        DelayClient rig = DelayClient.start(server, "rig", lines.toArray(DelayLine[]::new));
        ProgrammeClient programme = ProgrammeClient.start(server, 5, inputs)) {
      Future<Answer> watch = thread.submit(() -> new WatchJob(request).run(site, ears, stop));
      List<Held> held = held(minutes, everySeconds, server, watch);
      stop.stop();
      Answer answer = watch.get(30, TimeUnit.SECONDS);
      return new Seen(held, ears.looks.get(), List.copyOf(ears.events), answer);
    } finally {
      stop.stop();
      thread.shutdownNow();
    }
  }

  private static List<Held> held(
      double minutes, double everySeconds, AudioServer server, Future<Answer> watch)
      throws Exception {
    List<Held> held = new ArrayList<>();
    long begun = System.nanoTime();
    for (double at = everySeconds; at <= 60 * minutes && !watch.isDone(); at += everySeconds) {
      double left = at - (System.nanoTime() - begun) / 1e9;
      Thread.sleep((long) (1000 * Math.max(0, left)));
      held.add(held((System.nanoTime() - begun) / 1e9, server));
      System.out.println(held.get(held.size() - 1));
    }
    return held;
  }

  private static Held held(double seconds, AudioServer server) throws Exception {
    System.gc();
    OperatingSystemMXBean system = ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);
    int handles = 0;
    try (DirectoryStream<Path> open = Files.newDirectoryStream(Path.of("/proc/self/fd"))) {
      for (Path ignored : open) {
        handles++;
      }
    }
    return new Held(
        seconds,
        ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed(),
        ManagementFactory.getThreadMXBean().getThreadCount(),
        handles,
        ports(server),
        system.getProcessCpuTime() / 1e9);
  }

  private static int ports(AudioServer server) throws Exception {
    ProcessBuilder list = new ProcessBuilder("jack_lsp");
    list.environment().putAll(server.environment());
    list.redirectError(ProcessBuilder.Redirect.DISCARD);
    Process process = list.start();
    int ports = 0;
    String listed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    for (String line : listed.lines().toList()) {
      ports += line.matches("(system|rig|programme):.*") ? 0 : 1;
    }
    process.waitFor();
    return ports;
  }

  /** Counts looks and keeps events. */
  private static final class Ears implements WatchListener {
    final AtomicInteger looks = new AtomicInteger();
    final List<WatchLine> events = new ArrayList<>();

    @Override
    public void starts(List<String> paths, String announcement) {
      System.out.println(announcement);
    }

    @Override
    public void states(List<WatchLine> states) {
      looks.incrementAndGet();
    }

    @Override
    public void happens(WatchLine event) {
      events.add(event);
      System.out.print(event.text());
    }

    @Override
    public void notes(String sentence) {
      System.out.println(sentence);
    }
  }

  /** Watches for this many minutes and prints all. */
  public static void main(String[] args) throws Exception {
    Path folder = Files.createTempDirectory("watch-stretch");
    Seen seen = run(Double.parseDouble(args[0]), 60, folder);
    Held first = seen.held().get(0);
    Held last = seen.held().get(seen.held().size() - 1);
    System.out.printf(
        Locale.ROOT, "%d looks, %.3f of a core%n", seen.looks(), last.coresSince(first));
    System.out.print(seen.answer().document().text());
    System.exit(0);
  }
}
