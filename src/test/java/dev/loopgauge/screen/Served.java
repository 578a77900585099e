package dev.loopgauge.screen;

import dev.loopgauge.cli.wiring.Adapters;
import dev.loopgauge.job.Person;
import dev.loopgauge.job.live.AudioSystem;
import dev.loopgauge.job.live.DeviceChoice;
import dev.loopgauge.job.live.LiveChoice;
import dev.loopgauge.job.live.Site;
import dev.loopgauge.job.live.StimulusChoice;
import dev.loopgauge.screen.desk.Desk;
import dev.loopgauge.screen.desk.ScreenRequest;
import dev.loopgauge.screen.web.ScreenServer;
import dev.loopgauge.screen.web.Sharing;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;

/** A screen that is served within a test. */
final class Served implements AutoCloseable {
  final Desk desk;
  final ScreenServer server;

  private Served(Desk desk, ScreenServer server) {
    this.desk = desk;
    this.server = server;
  }

  /** The demo's rig in the built-in rig. */
  static Served demo(Path folder, Sharing sharing) throws Exception {
    return of(demoChain(folder), folder, "simulated", Adapters.ofThisComputer(), sharing);
  }

  /** A chain file on a back end, with data and journal in a folder. */
  static Served of(Path chain, Path folder, String backend, AudioSystem audio, Sharing sharing)
      throws Exception {
    LiveChoice live =
        new LiveChoice(Optional.empty(), device(backend, Optional.empty()), StimulusChoice.NONE);
    return of(chain, folder, live, audio, sharing);
  }

  /** A back end, and the program on it whose ports are the card's. */
  static DeviceChoice device(String backend, Optional<String> program) {
    return new DeviceChoice(
        Optional.of(backend),
        program,
        program,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /** The same with all that can be chosen. */
  static Served of(Path chain, Path folder, LiveChoice live, AudioSystem audio, Sharing sharing)
      throws Exception {
    ScreenRequest request =
        new ScreenRequest(
            chain, live, Optional.of(folder.resolve("journal.db").toString()), Optional.empty());
    Map<String, String> environment = Map.of("LOOPGAUGE_DATA", folder.resolve("data").toString());
    Desk desk = new Desk(request, new Site(audio, Person.nobody(), environment));
    return new Served(desk, ScreenServer.start(desk, 0, sharing));
  }

  /** The demo's chain file in a folder. */
  static Path demoChain(Path folder) throws IOException {
    Path file = folder.resolve("lantern-theatre.yaml");
    try (InputStream in =
        Served.class.getResourceAsStream("/dev/loopgauge/demo/" + file.getFileName())) {
      Files.copy(in, file);
    }
    return file;
  }

  @Override
  public void close() {
    desk.close();
    server.close();
  }
}
