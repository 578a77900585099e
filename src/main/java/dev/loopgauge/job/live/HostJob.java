package dev.loopgauge.job.live;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.HostReport;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.setup.SetupException;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/**
 * Checks what a host or plug-in reports against what it really adds.
 *
 * @param request what to measure
 * @param through the program of the audio server whose ports the path runs through
 * @param states the plug-in's states to step through; empty for none
 * @param witnessReturn another return of the host to watch beside the path
 * @param witnessSend what feeds it; empty for the path's own send
 */
public record HostJob(
    LiveRequest request,
    Optional<String> through,
    List<String> states,
    Optional<Integer> witnessReturn,
    Optional<Integer> witnessSend) {
  /**
   * Checks that the choices go together.
   *
   * @throws UsageException when they don't
   */
  public HostJob {
    states = List.copyOf(states);
    if (states.isEmpty() && (witnessReturn.isPresent() || witnessSend.isPresent())) {
      throw new UsageException(
          "--witness-return goes with --states", "name the states, such as active,bypassed");
    }
    if (states.size() == 1 || states.stream().distinct().count() != states.size()) {
      throw new UsageException(
          "expected two states or more, each once, found " + String.join(",", states),
          "for example --states active,bypassed,reloaded");
    }
    if (states.isEmpty() && through.isEmpty() && request.reported().equals(HostReport.NONE)) {
      throw new UsageException(
          "what shall be checked? found no --through, --states or --reported-samples",
          "--reported-samples N checks what the host shows; on jack --through NAME asks the server");
    }
  }

  /**
   * Measures and checks.
   *
   * @throws CaptureException when the sound failed
   * @throws UsageException when the back end or the person can't do what was asked
   */
  public Answer run(Site site)
      throws CaptureException, SetupException, ChainFormatException, IOException {
    return LiveRun.kept(site, request, this::checked);
  }

  private Answer checked(LiveRun run) throws CaptureException, SetupException, IOException {
    if (through.isPresent()) {
      ThroughProgram.check(run);
    }
    if (!states.isEmpty()) {
      return guided(run).answer(states);
    }
    if (through.isPresent()) {
      return new ThroughProgram(run, through.get()).answer();
    }
    run.consent().requireSomebody();
    return new PathMeasurement(run, run.target(run.settings()), "host").once(false, now -> {});
  }

  private PluginStates guided(LiveRun run) {
    if (!run.site().person().present()) {
      throw new UsageException(
          "--states needs somebody at a terminal who sets the plug-in in between",
          "without one, record each state and compare them by `analyze --bypassed`");
    }
    Profile settings =
        through
            .map(client -> request.live().settingsThrough(client, run.kept(), run.chosen()))
            .orElseGet(run::settings);
    int send = witnessSend.orElse(settings.patching().rig().send());
    return new PluginStates(
        run,
        run.target(settings),
        witnessReturn.map(returned -> new ChannelPair(send, returned)),
        through.isPresent());
  }
}
