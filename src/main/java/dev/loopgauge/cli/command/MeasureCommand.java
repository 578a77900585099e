package dev.loopgauge.cli.command;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.cli.option.ArrivalOption;
import dev.loopgauge.cli.option.BudgetOptions;
import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.cli.option.HostCheckOptions;
import dev.loopgauge.cli.option.JournalOptions;
import dev.loopgauge.cli.option.LiveOptions;
import dev.loopgauge.cli.option.RigOptions;
import dev.loopgauge.cli.terminal.Answer;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.cli.terminal.UsageException;
import dev.loopgauge.cli.wiring.Backends;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.job.kept.JournalKeeper;
import dev.loopgauge.job.live.Consent;
import dev.loopgauge.job.live.LiveTarget;
import dev.loopgauge.job.live.Overheard;
import dev.loopgauge.job.live.PatchChecking;
import dev.loopgauge.job.live.PathMeasurement;
import dev.loopgauge.job.live.PluginStates;
import dev.loopgauge.job.live.Soaking;
import dev.loopgauge.job.live.ThroughProgram;
import dev.loopgauge.job.recorded.PackedRecording;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.setup.DataFolder;
import dev.loopgauge.setup.Profile;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Plays, records, and finds how late the path is. */
@Command(
    sortOptions = false,
    description = "Play, record, and find how late a path is; compare it with its budget.",
    footer = {
      "",
      "Channels count from 1. Best patched: send 1 straight to return 1, send 2 into",
      "the path, its output to return 2; then the sound card's own delay cancels:",
      "--send 2 --return 2 --reference-send 1 --reference-return 1."
    })
public final class MeasureCommand implements Subcommand {
  private final Console console;
  private final Backends all;

  @Mixin private final LiveOptions live = new LiveOptions();
  @Mixin private final BudgetOptions budget = new BudgetOptions();
  @Mixin private final HostCheckOptions host = new HostCheckOptions();
  @Mixin private final RigOptions rig = new RigOptions();
  @Mixin private final ArrivalOption arrival = new ArrivalOption();
  @Mixin private final JournalOptions journal = new JournalOptions();

  @Option(
      names = "--through",
      paramLabel = "CLIENT",
      description = {
        "On jack: through this program's ports (send 1, return 1 unless named),",
        "against the latency that the server's graph reports for it."
      })
  private Optional<String> through = Optional.empty();

  @Option(
      names = "--calibrate",
      description = "First measure a patch cable, then the path, in one session.")
  private boolean calibrate;

  @Option(
      names = "--check-patch",
      description = "Only find out which return hears which send, by quiet ticks.")
  private boolean checkPatch;

  @Option(
      names = "--soak",
      paramLabel = "MINUTES",
      converter = Converters.Positive.class,
      description = {
        "Measure again and again at -40 dBFS (or --level) for so long; count dropouts",
        "and steps of the delay. Exits with 1 if anything happened."
      })
  private Optional<Double> soakMinutes = Optional.empty();

  @Option(
      names = "--tell-apart",
      description = {
        "Where several causes fit, set the host to the block size that tells them",
        "apart, measure again, and set it back; on jack all else is interrupted."
      })
  private boolean tellApart;

  @Option(
      names = "--states",
      paramLabel = "LIST",
      split = ",",
      description = {
        "Be guided through the states of a plug-in, such as active,bypassed,reloaded:",
        "each is measured and held against what is reported then."
      })
  private List<String> states = List.of();

  @Option(
      names = "--witness-return",
      paramLabel = "N",
      converter = Converters.Count.class,
      description = "With --states: another channel of the host; does it move too?")
  private Optional<Integer> witnessReturn = Optional.empty();

  @Option(
      names = "--witness-send",
      paramLabel = "N",
      converter = Converters.Count.class,
      description = "What feeds it (the path's own send).")
  private Optional<Integer> witnessSend = Optional.empty();

  @Option(names = "--yes", description = "Play without asking first.")
  private boolean yes;

  /** A command on a console with back ends. */
  public MeasureCommand(Console console, Backends backends) {
    this.console = console;
    this.all = backends;
  }

  @Override
  public Answer answer() throws Exception {
    journal.check();
    if (checkPatch && journal.asked()) {
      throw new UsageException(
          "--check-patch measures nothing to keep", "leave --journal out, or --check-patch");
    }
    Overheard overheard = new Overheard();
    Answer answer = measured(all.overheardBy(overheard::on));
    Optional<PackedRecording> recording =
        overheard
            .capture()
            .filter(heard -> journal.keepCapture)
            .map(heard -> PackedRecording.of(heard.returns()));
    return new JournalKeeper(journal, budget, console).keep(answer, overheard.info(), recording);
  }

  private Answer measured(Backends backends) throws Exception {
    DataFolder data = DataFolder.of(console.environment());
    Optional<Profile> kept = live.kept(data);
    Optional<ChosenPath> chosen = journal.chosen(budget);
    AudioBackend backend = rig.backend(backends, live.device.backend(kept), chosen);
    Consent consent = new Consent(console, !backend.name().equals(LiveOptions.SIMULATED), yes);
    checkOneKind();
    if (checkPatch) {
      return new PatchChecking(backends, backend, live, kept, consent).answer();
    }
    if (!states.isEmpty()) {
      return guided(backends, backend, kept, consent, data).answer(states, chosen);
    }
    if (through.isPresent()) {
      return new ThroughProgram(backends, backend, live, kept, arrival.choice(), consent, host)
          .answer(through.get(), chosen);
    }
    Profile settings = live.settings(kept);
    if (calibrate) {
      checkCalibrate(settings, consent);
    }
    consent.requireSomebody();
    LiveTarget target = target(backends, backend, settings, data);
    if (soakMinutes.isPresent()) {
      LiveTarget low = target.with(settings.with(live.stimulus.lowPlan(kept)));
      try (AudioSession session = low.open()) {
        return new Soaking(low.reading(session, consent), soakMinutes.get(), chosen, host)
            .answer(data.calibrations());
      }
    }
    PathMeasurement path = new PathMeasurement(target, chosen, host, rig, consent);
    return calibrate ? path.afterCable(Instant.now()) : path.once(tellApart);
  }

  private LiveTarget target(
      Backends backends, AudioBackend backend, Profile settings, DataFolder data) {
    return new LiveTarget(
        backends, backend, live.profile, settings, arrival.choice(), data.calibrations());
  }

  private PluginStates guided(
      Backends backends,
      AudioBackend backend,
      Optional<Profile> kept,
      Consent consent,
      DataFolder data) {
    if (states.size() < 2 || states.stream().distinct().count() != states.size()) {
      throw new UsageException(
          "expected two states or more, each once, found " + String.join(",", states),
          "for example --states active,bypassed,reloaded");
    }
    if (!console.terminal()) {
      throw new UsageException(
          "--states needs somebody at a terminal who sets the plug-in in between",
          "without one, record each state and compare them by `analyze --bypassed`");
    }
    Profile settings =
        through
            .map(client -> live.settingsThrough(client, kept))
            .orElseGet(() -> live.settings(kept));
    int send = witnessSend.orElse(settings.patching().rig().send());
    return new PluginStates(
        target(backends, backend, settings, data),
        witnessReturn.map(returned -> new ChannelPair(send, returned)),
        through.isPresent(),
        host,
        consent);
  }

  private void checkOneKind() {
    if (states.isEmpty() && (witnessReturn.isPresent() || witnessSend.isPresent())) {
      throw new UsageException(
          "--witness-return goes with --states", "name the states, such as active,bypassed");
    }
    long kinds =
        Stream.of(
                calibrate,
                checkPatch,
                through.isPresent() || !states.isEmpty(),
                soakMinutes.isPresent())
            .filter(asked -> asked)
            .count();
    if (kinds > 1) {
      throw new UsageException(
          "expected one of --calibrate, --check-patch, --soak and --through or --states, found "
              + kinds,
          "do one after the other");
    }
  }

  private static void checkCalibrate(Profile settings, Consent consent) {
    if (settings.patching().reference().isPresent()) {
      throw new UsageException(
          "expected --calibrate or a reference, found both",
          "the reference is the better way: leave --calibrate out");
    }
    if (!consent.makesSound() || !consent.console().terminal()) {
      throw new UsageException(
          "--calibrate needs a sound card, and somebody at a terminal who patches in between",
          "use a reference instead: --reference-send and --reference-return");
    }
  }
}
