package dev.loopgauge.metrics;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.WatchListener;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.LongSupplier;

/** Serves the figures of a watch to this computer alone, until it is closed. */
public final class MetricsServer implements AutoCloseable {
  static final String LOOPBACK = "127.0.0.1";

  private static final String PAGE = "/metrics";
  private static final int WAITING = 16;
  private static final int THREADS = 4;

  /** Who takes longer to ask or to read is let go, in seconds, so that nobody holds a thread. */
  private static final String LIMIT_SECONDS = "5";

  private static final int OK = 200;
  private static final int FORBIDDEN = 403;
  private static final int NOT_FOUND = 404;
  private static final int ONLY_READING = 405;

  private final WatchFigures figures;
  private final HttpServer server;
  private final ExecutorService threads;
  private final HostHeaderGuard hosts;

  private MetricsServer(WatchFigures figures, HttpServer server) {
    this.figures = figures;
    this.server = server;
    this.hosts = HostHeaderGuard.on(LOOPBACK, server.getAddress().getPort());
    this.threads = Executors.newFixedThreadPool(THREADS, MetricsServer::thread);
    server.setExecutor(threads);
    server.createContext("/", this::answer);
    server.start();
  }

  /**
   * Serves from now on.
   *
   * @param port where; 0 for any that is free
   * @throws UsageException when the port is taken or may not be used
   */
  public static MetricsServer start(int port) {
    return start(port, System::nanoTime);
  }

  /** The same by another clock in nanoseconds. */
  static MetricsServer start(int port, LongSupplier nanos) {
    System.setProperty("sun.net.httpserver.maxReqTime", LIMIT_SECONDS);
    System.setProperty("sun.net.httpserver.maxRspTime", LIMIT_SECONDS);
    try {
      InetAddress here = InetAddress.getByAddress(LOOPBACK, new byte[] {127, 0, 0, 1});
      HttpServer server = HttpServer.create(new InetSocketAddress(here, port), WAITING);
      return new MetricsServer(new WatchFigures(nanos), server);
    } catch (IOException e) {
      throw refused(port, e.getMessage());
    }
  }

  private static UsageException refused(int port, String reason) {
    boolean taken = reason != null && reason.toLowerCase(Locale.ROOT).contains("in use");
    return new UsageException(
        taken
            ? "port " + port + " is taken: is there a watch on it already?"
            : "port " + port + " can't be served: " + reason,
        "choose another by --metrics, or 0 for any that is free");
  }

  private static Thread thread(Runnable work) {
    Thread thread = new Thread(work, "loopgauge-metrics");
    thread.setDaemon(true);
    return thread;
  }

  /** What is to hear of the watch. */
  public WatchListener listener() {
    return figures;
  }

  /** Where the figures are. */
  public String address() {
    return "http://" + LOOPBACK + ":" + server.getAddress().getPort() + PAGE;
  }

  private void answer(HttpExchange exchange) throws IOException {
    try (exchange) {
      if (!hosts.passes(exchange.getRequestHeaders().get("Host"))) {
        refuse(exchange, FORBIDDEN, "Ask for this computer by the address that the watch printed.");
      } else if (!List.of("GET", "HEAD").contains(exchange.getRequestMethod())) {
        refuse(exchange, ONLY_READING, "There is nothing here but to read.");
      } else if (!exchange.getRequestURI().getPath().equals(PAGE)) {
        refuse(exchange, NOT_FOUND, "The figures are at " + PAGE + ".");
      } else {
        send(exchange, OK, OpenMetricsText.TYPE, OpenMetricsText.of(figures.now()));
      }
    }
  }

  private static void refuse(HttpExchange exchange, int status, String why) throws IOException {
    send(
        exchange,
        status,
        "text/plain; charset=utf-8",
        (why + "\n").getBytes(StandardCharsets.UTF_8));
  }

  private static void send(HttpExchange exchange, int status, String type, byte[] body)
      throws IOException {
    Headers headers = exchange.getResponseHeaders();
    headers.set("Content-Type", type);
    headers.set("Cache-Control", "no-store");
    headers.set("X-Content-Type-Options", "nosniff");
    headers.set("Cross-Origin-Resource-Policy", "same-origin");
    if (exchange.getRequestMethod().equals("HEAD")) {
      headers.set("Content-Length", String.valueOf(body.length));
      exchange.sendResponseHeaders(status, -1);
    } else {
      exchange.sendResponseHeaders(status, body.length);
      exchange.getResponseBody().write(body);
    }
  }

  @Override
  public void close() {
    server.stop(0);
    threads.shutdownNow();
  }
}
