package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.AudioDevice.Channels;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.measure.MeasurementPlan;
import dev.loopgauge.measure.PatchCheck;
import dev.loopgauge.measure.PatchMap;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.signal.PlayedStimulus;
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

  /**
   * Ticks sends, some in each take. Where the device's channels must be counted, and other programs
   * may lose it by that, it asks before.
   *
   * @param named the sends; none for the device's first ones
   * @throws CaptureException when the sound failed
   */
  PatchMap of(List<Integer> named) throws CaptureException, IOException {
    List<AudioDevice> devices = devices(backend);
    Optional<AudioDevice> output = chosen(devices, live.device().output(kept), Channels::sends);
    Optional<AudioDevice> input = chosen(devices, live.device().input(kept), Channels::returns);
    consent.requireSomebody();
    boolean countsSends = named.isEmpty() && isUncounted(output);
    Consent asked = countsSends || isUncounted(input) ? beforeCounting(named) : consent;
    Optional<AudioDevice> hears = counted(input);
    List<Integer> sends = named;
    if (named.isEmpty()) {
      Optional<AudioDevice> plays = output.equals(input) ? hears : counted(output);
      sends = channels(plays, Channels::sends).stream().limit(MOST_AT_ONCE).toList();
    }
    return ticked(asked, sends, channels(hears, Channels::returns));
  }

  private Optional<AudioDevice> counted(Optional<AudioDevice> device) throws CaptureException {
    return device.isPresent() ? Optional.of(backend.counted(device.get())) : device;
  }

  private Consent beforeCounting(List<Integer> named) throws IOException {
    List<Integer> some = named.isEmpty() ? List.of(1) : named;
    PlayedStimulus tick = check(some, List.of(1)).plan().stimulus();
    return consent.opening(
        backend,
        live.device().request(kept, some, List.of(1)),
        info ->
            named.isEmpty()
                ? Announcement.ofFirstTicks(info, MOST_AT_ONCE, tick)
                : Announcement.ofTicks(info, named, tick));
  }

  private PatchMap ticked(Consent asked, List<Integer> sends, List<Integer> returns)
      throws CaptureException, IOException {
    List<PatchMap.Heard> heard = new ArrayList<>();
    List<String> incidents = new ArrayList<>();
    for (int from = 0; from < sends.size(); from += MOST_AT_ONCE) {
      List<Integer> some = sends.subList(from, Math.min(from + MOST_AT_ONCE, sends.size()));
      PatchMap map = take(asked, check(some, returns), from == 0 ? sends : List.of());
      heard.addAll(map.heard());
      incidents.addAll(map.incidents());
    }
    return new PatchMap(sends, returns, heard, incidents);
  }

  private PatchMap take(Consent before, PatchCheck check, List<Integer> announced)
      throws CaptureException, IOException {
    SessionRequest request = live.device().request(kept, check.sends(), check.returns());
    Function<SessionInfo, String> ticks =
        info -> Announcement.ofTicks(info, announced, check.plan().stimulus());
    Consent asked = announced.isEmpty() ? before : before.opening(backend, request, ticks);
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
   * The device of that name, or whose name starts so; without a name the first one. Those whose
   * channels weren't counted may have the direction.
   */
  private static Optional<AudioDevice> chosen(
      List<AudioDevice> devices, Optional<String> name, ToIntFunction<Channels> count) {
    String start = name.orElse("").toLowerCase(Locale.ROOT);
    List<AudioDevice> able =
        devices.stream()
            .filter(device -> device.channels().map(count::applyAsInt).orElse(1) > 0)
            .filter(device -> device.name().toLowerCase(Locale.ROOT).startsWith(start))
            .toList();
    Optional<AudioDevice> counted =
        able.stream().filter(device -> name.isEmpty() && device.channels().isPresent()).findFirst();
    return counted.or(() -> able.stream().findFirst());
  }

  private static boolean isUncounted(Optional<AudioDevice> device) {
    return device.filter(listed -> listed.channels().isEmpty()).isPresent();
  }

  /** All channels of a device; where there is none, one: opening it says what is wrong. */
  private static List<Integer> channels(
      Optional<AudioDevice> device, ToIntFunction<Channels> count) {
    int most = device.flatMap(AudioDevice::channels).map(count::applyAsInt).orElse(1);
    return IntStream.rangeClosed(1, Math.max(1, most)).boxed().toList();
  }
}
