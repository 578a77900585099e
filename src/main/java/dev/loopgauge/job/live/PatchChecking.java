package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.cli.option.LiveOptions;
import dev.loopgauge.cli.terminal.Answer;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.cli.wiring.Backends;
import dev.loopgauge.measure.MeasurementPlan;
import dev.loopgauge.measure.PatchCheck;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.report.measured.PatchDocument;
import dev.loopgauge.setup.Profile;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;

/**
 * {@code measure --check-patch}: ticks on the sends that were named, or on all, while all returns
 * of the device listen.
 *
 * @param backends all there are
 * @param backend the one to use
 * @param live what was asked for
 * @param kept the profile under it
 * @param consent asked before the ticks
 */
public record PatchChecking(
    Backends backends,
    AudioBackend backend,
    LiveOptions live,
    Optional<Profile> kept,
    Consent consent) {
  /** So many sends are ticked unless they are named; more would take too long. */
  private static final int MOST_UNNAMED = 8;

  public Answer answer() throws CaptureException, IOException {
    Optional<Patching> said = live.device.patchingIfSaid(kept);
    PatchCheck check = check(said);
    consent.requireSomebody();
    SessionRequest request = live.device.request(kept, check.sends(), check.returns());
    try (AudioSession session = backends.open(backend, live.profile, request)) {
      consent.ask(Announcement.ofTicks(session.info(), check.sends(), check.plan().stimulus()));
      PatchDocument document = new PatchDocument(said, check.run(session));
      return new Answer(document.isGood() ? ExitCode.GOOD : ExitCode.NOT_TRUSTWORTHY, document);
    }
  }

  private PatchCheck check(Optional<Patching> said) throws CaptureException {
    List<AudioDevice> devices = devices();
    List<Integer> all = channels(devices, live.device.output(kept), AudioDevice::sends);
    List<Integer> sends =
        said.map(patching -> patching.sends().stream().sorted().toList())
            .orElse(all.stream().limit(MOST_UNNAMED).toList());
    List<Integer> returns = channels(devices, live.device.input(kept), AudioDevice::returns);
    MeasurementPlan plan = live.stimulus.plan(kept);
    return PatchCheck.quiet(sends, returns, plan.stimulus().levelDbfs(), plan.maxDelaySeconds());
  }

  private List<AudioDevice> devices() throws CaptureException {
    Availability seen = backend.look();
    if (seen instanceof Availability.Usable usable) {
      return usable.devices();
    }
    Availability.Unusable unusable = (Availability.Unusable) seen;
    throw new CaptureException(
        CaptureException.Kind.BACKEND_UNUSABLE, unusable.reason(), unusable.hint());
  }

  /**
   * All channels of the device of that name, or whose name starts so; of the first without a name.
   * Where none is found, one channel: opening it says what is wrong.
   */
  private static List<Integer> channels(
      List<AudioDevice> devices, Optional<String> name, ToIntFunction<AudioDevice> count) {
    String start = name.orElse("").toLowerCase(Locale.ROOT);
    int most =
        devices.stream()
            .filter(device -> count.applyAsInt(device) > 0)
            .filter(device -> device.name().toLowerCase(Locale.ROOT).startsWith(start))
            .mapToInt(count)
            .findFirst()
            .orElse(1);
    return IntStream.rangeClosed(1, most).boxed().toList();
  }
}
