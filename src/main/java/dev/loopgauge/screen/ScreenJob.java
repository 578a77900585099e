package dev.loopgauge.screen;

import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.Ending;
import dev.loopgauge.job.Person;
import dev.loopgauge.job.StopSign;
import dev.loopgauge.job.live.Site;
import dev.loopgauge.report.measured.ScreenDocument;
import dev.loopgauge.screen.desk.Desk;
import dev.loopgauge.screen.desk.ScreenRequest;
import dev.loopgauge.screen.web.ScreenServer;
import dev.loopgauge.screen.web.Sharing;
import dev.loopgauge.setup.SetupException;
import java.util.List;

/**
 * Serves the screen.
 *
 * @param port where; 0 for any that is free
 * @param share whether others on the network may look
 * @param control whether they may begin measurements as well
 * @param open whether to open it in the browser
 */
public record ScreenJob(
    ScreenRequest request, int port, boolean share, boolean control, boolean open) {
  /**
   * Serves it until it is stopped.
   *
   * @throws dev.loopgauge.job.UsageException when the port is taken, or the request can't be met
   */
  public Answer run(Site site, StopSign stop)
      throws ChainFormatException, SetupException, InterruptedException {
    try (Desk desk = new Desk(request, site);
        ScreenServer server = ScreenServer.start(desk, port, sharing())) {
      tell(site.person(), server);
      if (open) {
        OpenBrowser.at(server.address(), site.person());
      }
      stop.await();
      ScreenDocument document = desk.document();
      return new Answer(document.isGood() ? Ending.GOOD : Ending.OUTSIDE, document);
    }
  }

  private Sharing sharing() {
    if (control) {
      return Sharing.CONTROL;
    }
    return share ? Sharing.LOOK : Sharing.NOBODY;
  }

  private void tell(Person person, ScreenServer server) {
    person.say("Open " + server.address());
    if (sharing() != Sharing.NOBODY) {
      share(person, server);
    }
    person.say("Ctrl-C ends it.");
  }

  private void share(Person person, ScreenServer server) {
    person.say(
        server.code().isEmpty()
            ? "This computer is on no network, so that nobody else can look."
            : server.code().stripTrailing());
    List<String> shared = server.shared();
    int last = shared.size() - 1;
    shared.subList(0, last).forEach(address -> person.say("Others: " + address));
    person.say("What they see, here: " + shared.get(last));
    person.say("Others on this network could read along: it is sent unencrypted.");
    person.say(
        control
            ? "They may ask to measure; you agree on this computer's page."
            : "They can look, and stop what plays; they can't play.");
  }
}
