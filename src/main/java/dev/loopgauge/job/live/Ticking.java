package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.measure.MeasurementPlan;
import dev.loopgauge.measure.PatchCheck;
import dev.loopgauge.measure.PatchMap;
import dev.loopgauge.setup.Profile;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;

/**
 * Ticks sends while all returns of the device listen.
 *
 * @param site where it plays
 * @param live where to play and record
 * @param kept the profile under it
 * @param backend plays
 * @param consent asked before the first tick
 * @param loopSeconds how late the latest path is by its budget, 0 where that isn't known
 */
record Ticking(
    Site site,
    LiveChoice live,
    Optional<Profile> kept,
    AudioBackend backend,
    Consent consent,
    double loopSeconds) {
  /** How many sends are ticked in one take, and at all where none is named. */
  private static final int MOST_AT_ONCE = 8;

  /** The first sends of the device, as many as are ticked where none is named. */
  List<Integer> firstSends() throws CaptureException {
    return channels(devices(backend), live.device().output(kept), AudioDevice::sends).stream()
        .limit(MOST_AT_ONCE)
        .toList();
  }

  /**
   * Ticks these sends, some in each take.
   *
   * @throws CaptureException when the sound failed
   */
  PatchMap of(List<Integer> sends) throws CaptureException, IOException {
    List<Integer> returns =
        channels(devices(backend), live.device().input(kept), AudioDevice::returns);
    consent.requireSomebody();
    List<PatchMap.Heard> heard = new ArrayList<>();
    List<String> incidents = new ArrayList<>();
    for (int from = 0; from < sends.size(); from += MOST_AT_ONCE) {
      List<Integer> some = sends.subList(from, Math.min(from + MOST_AT_ONCE, sends.size()));
      PatchMap map = take(check(some, returns), from == 0 ? sends : List.of());
      heard.addAll(map.heard());
      incidents.addAll(map.incidents());
    }
    return new PatchMap(sends, returns, heard, incidents);
  }

  private PatchMap take(PatchCheck check, List<Integer> announced)
      throws CaptureException, IOException {
    SessionRequest request = live.device().request(kept, check.sends(), check.returns());
    Function<SessionInfo, String> ticks =
        info -> Announcement.ofTicks(info, announced, check.plan().stimulus());
    Consent asked = announced.isEmpty() ? consent : consent.opening(backend, request, ticks);
    try (AudioSession session = site.audio().open(backend, live.profile(), request)) {
      if (!announced.isEmpty()) {
        asked.ask(ticks.apply(session.info()));
      }
      return check.run(session);
    }
  }

  private PatchCheck check(List<Integer> sends, List<Integer> returns) {
    MeasurementPlan plan = live.stimulus().plan(kept, loopSeconds);
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
