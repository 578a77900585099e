package dev.loopgauge.cli.command;

import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.WatchListener;
import dev.loopgauge.job.event.OnEvent;
import dev.loopgauge.metrics.MetricsServer;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/** Where a watch tells what it hears beside the screen, until it is closed. */
final class WatchOutlets implements AutoCloseable {
  private final WatchListener screen;
  private final List<WatchListener> all = new ArrayList<>();
  private final Deque<Runnable> open = new ArrayDeque<>();

  private WatchOutlets(WatchListener screen) {
    this.screen = screen;
    all.add(screen);
  }

  /**
   * Opens what was asked.
   *
   * @param screen hears all, and what goes wrong elsewhere
   * @param metrics the port to serve figures on
   * @param onEvent the command to run on events
   * @throws UsageException when one of them can't be had
   */
  static WatchOutlets open(
      WatchListener screen, Optional<Integer> metrics, Optional<String> onEvent) {
    WatchOutlets outlets = new WatchOutlets(WatchListener.inTurn(screen));
    try {
      onEvent.ifPresent(outlets::run);
      metrics.ifPresent(outlets::serve);
      return outlets;
    } catch (UsageException e) {
      outlets.close();
      throw e;
    }
  }

  private void run(String command) {
    OnEvent running = OnEvent.running(command, screen::notes);
    open.push(running::close);
    all.add(running);
  }

  private void serve(int port) {
    MetricsServer server = MetricsServer.start(port);
    open.push(server::close);
    all.add(server.listener());
    screen.notes("Metrics at " + server.address() + ", for this computer alone.");
  }

  /** All of them. */
  WatchListener listener() {
    return WatchListener.toAll(all);
  }

  @Override
  public void close() {
    open.forEach(Runnable::run);
    open.clear();
  }
}
