package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.BudgetChoice;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.job.Ending;
import dev.loopgauge.measure.MeasurementPlan;
import dev.loopgauge.measure.PatchCheck;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.report.measured.PatchDocument;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.setup.SetupException;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;

/**
 * Finds out which return hears which send: ticks on the sends that were named, or on all, while all
 * returns of the device listen.
 *
 * @param live where to play and record; what is named is what should be heard
 * @param budget what the built-in rig imitates
 * @param rig what is wrong with it
 * @param agreed whether somebody agreed beforehand that sound is played
 */
public record PatchJob(LiveChoice live, BudgetChoice budget, RigChoice rig, boolean agreed) {
  /** So many sends are ticked unless they are named; more would take too long. */
  private static final int MOST_UNNAMED = 8;

  /**
   * Ticks and listens.
   *
   * @throws CaptureException when the sound failed
   */
  public Answer run(Site site)
      throws CaptureException, SetupException, ChainFormatException, IOException {
    Optional<Profile> kept = live.kept(site.data());
    DeviceChoice device = live.device();
    Optional<ChosenPath> chosen = budget.chosen();
    AudioBackend backend =
        rig.backend(site.audio(), device.backend(kept), chosen, device.plug(kept, chosen));
    Consent consent = Consent.of(site.person(), backend, agreed);
    Optional<Patching> said = device.patchingIfSaid(kept, chosen);
    PatchCheck check = check(backend, kept, said);
    consent.requireSomebody();
    SessionRequest request = live.device().request(kept, check.sends(), check.returns());
    try (AudioSession session = site.audio().open(backend, live.profile(), request)) {
      consent.ask(Announcement.ofTicks(session.info(), check.sends(), check.plan().stimulus()));
      PatchDocument document = PatchDocument.of(said, check.run(session));
      return new Answer(document.isGood() ? Ending.GOOD : Ending.NOT_TRUSTWORTHY, document);
    }
  }

  private PatchCheck check(AudioBackend backend, Optional<Profile> kept, Optional<Patching> said)
      throws CaptureException {
    List<AudioDevice> devices = devices(backend);
    List<Integer> all = channels(devices, live.device().output(kept), AudioDevice::sends);
    List<Integer> sends =
        said.map(patching -> patching.sends().stream().sorted().toList())
            .orElse(all.stream().limit(MOST_UNNAMED).toList());
    List<Integer> returns = channels(devices, live.device().input(kept), AudioDevice::returns);
    MeasurementPlan plan = live.stimulus().plan(kept);
    return PatchCheck.quiet(sends, returns, plan.stimulus().levelDbfs(), plan.maxDelaySeconds());
  }

  private static List<AudioDevice> devices(AudioBackend backend) throws CaptureException {
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
