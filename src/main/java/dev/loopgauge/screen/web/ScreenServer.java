package dev.loopgauge.screen.web;

import dev.loopgauge.job.UsageException;
import dev.loopgauge.screen.desk.Desk;
import dev.loopgauge.signal.Hinted;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.net.BindException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.NetworkConnectionLimit;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/** The server of the screen, until it is closed. */
public final class ScreenServer implements AutoCloseable {
  /** How many pages may be open, and how many connections, here and from each network. */
  private static final int OWN_PAGES = 8;

  private static final int OTHER_PAGES = 24;
  private static final int OWN_CONNECTIONS = 48;
  private static final int OTHER_CONNECTIONS = 64;
  private static final int THREADS = 96;

  /** Who sends or takes nothing for so long is let go, in ms. */
  private static final int IDLE_MS = 10_000;

  private static final int LARGEST_HEADERS = 8_192;
  private static final int CONFLICT = 409;

  private final Javalin javalin;
  private final Pass pass;
  private final int port;
  private final List<String> networks;

  private ScreenServer(Javalin javalin, Pass pass, int port, List<String> networks) {
    this.javalin = javalin;
    this.pass = pass;
    this.port = port;
    this.networks = networks;
  }

  /**
   * Serves a desk.
   *
   * @param port where; 0 for any that is free
   * @throws UsageException when the port is taken
   */
  public static ScreenServer start(Desk desk, int port, Sharing sharing) {
    List<String> networks = sharing == Sharing.NOBODY ? List.of() : Addresses.onNetworks();
    int free = port == 0 ? FreePort.find() : port;
    Pass pass = Pass.of(sharing);
    Guard guard = new Guard(pass, hosts(networks, free), free);
    Javalin javalin = Javalin.create(config -> configure(config, desk, guard, networks, free));
    try {
      javalin.start();
    } catch (RuntimeException e) {
      javalin.stop();
      throw refused(e, free);
    }
    return new ScreenServer(javalin, pass, free, networks);
  }

  private static Set<String> hosts(List<String> networks, int port) {
    Set<String> hosts = new LinkedHashSet<>();
    hosts.add(Addresses.LOOPBACK + ":" + port);
    hosts.add("localhost:" + port);
    networks.forEach(address -> hosts.add(address + ":" + port));
    return hosts;
  }

  private static RuntimeException refused(RuntimeException failed, int port) {
    for (Throwable cause = failed; cause != null; cause = cause.getCause()) {
      if (cause instanceof BindException) {
        return new UsageException(
            "port " + port + " is taken: is there a screen on it already?",
            "open that one, or choose another by --port, such as --port " + (port + 1));
      }
    }
    return failed;
  }

  private static void configure(
      JavalinConfig config, Desk desk, Guard guard, List<String> networks, int port) {
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    config.startup.startupWatcherEnabled = false;
    config.http.maxRequestSize = LARGEST_HEADERS;
    QueuedThreadPool threads = new QueuedThreadPool(THREADS);
    threads.setDaemon(true);
    config.jetty.threadPool = threads;
    config.jetty.modifyHttpConfiguration(
        http -> {
          http.setSendServerVersion(false);
          http.setRequestHeaderSize(LARGEST_HEADERS);
        });
    listen(config, Addresses.LOOPBACK, port, OWN_CONNECTIONS);
    networks.forEach(address -> listen(config, address, port, OTHER_CONNECTIONS));
    config.routes.before(guard::check);
    new Pages(desk).on(config.routes);
    config.routes.get("/events", new Events(desk.board(), OWN_PAGES, OTHER_PAGES));
    new Orders(desk).on(config.routes);
    config.routes.exception(Exception.class, (thrown, ctx) -> failed(desk, thrown, ctx));
  }

  /** Each address has a share of its own, so that nobody elsewhere can use up this computer's. */
  private static void listen(JavalinConfig config, String address, int port, int most) {
    config.jetty.addConnector(
        (server, http) -> {
          ServerConnector connector =
              new ServerConnector(server, 1, 1, new HttpConnectionFactory(http));
          connector.setHost(address);
          connector.setPort(port);
          connector.setIdleTimeout(IDLE_MS);
          server.addBean(new NetworkConnectionLimit(most, connector));
          return connector;
        });
  }

  private static void failed(Desk desk, Exception thrown, Context ctx) {
    String text = "something went wrong that should not";
    if (thrown instanceof Hinted hinted) {
      text = desk.told(hinted.getMessage() + "; try: " + hinted.hint());
    } else if (thrown instanceof IllegalArgumentException) {
      text = desk.told(String.valueOf(thrown.getMessage()));
    }
    ctx.status(CONFLICT).contentType("text/plain;charset=utf-8").result(text);
  }

  /** The address for this computer's own browser. */
  public String address() {
    return address(Addresses.LOOPBACK, pass.own());
  }

  /** The addresses for others, of which the last is for this computer, to see what they see. */
  public List<String> shared() {
    List<String> shared = new ArrayList<>();
    networks.forEach(network -> shared.add(address(network, pass.shared())));
    shared.add(address(Addresses.LOOPBACK, pass.shared()));
    return shared;
  }

  /** The first address for others as a QR code, in lines for a terminal. */
  public String code() {
    return networks.isEmpty() ? "" : QrText.of(shared().get(0));
  }

  private String address(String host, String token) {
    return "http://" + host + ":" + port + "/?token=" + token;
  }

  @Override
  public void close() {
    javalin.stop();
  }
}
