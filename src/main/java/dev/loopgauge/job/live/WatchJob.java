package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.estimate.WatchPlan;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.ChainFile;
import dev.loopgauge.job.Ending;
import dev.loopgauge.job.Refusals;
import dev.loopgauge.job.StopSign;
import dev.loopgauge.job.WatchListener;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.setup.SetupException;
import dev.loopgauge.verify.KnownFacts;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Follows the delay of every path of a chain file from the programme itself. It plays nothing and
 * changes nothing, so nobody is asked.
 *
 * @param request what to watch
 */
public record WatchJob(WatchRequest request) {
  /**
   * Watches until the time is over or somebody has enough.
   *
   * @param told learns of states and events while it goes on, from one thread after the other
   * @param stop ends it in order, from any thread
   * @throws CaptureException when the devices don't open at first
   */
  public Answer run(Site site, WatchListener told, StopSign stop)
      throws CaptureException, SetupException, ChainFormatException {
    Chain chain = ChainFile.read(request.chain());
    Optional<Profile> kept =
        request.profile().isPresent()
            ? Optional.of(site.data().profiles().load(request.profile().get()))
            : Optional.empty();
    DeviceChoice device = request.device();
    WatchedPaths watched = WatchedPaths.of(chain, device, kept);
    WatchPlan plan =
        Refusals.asUsage(
            () ->
                new WatchPlan(
                    request.windowSeconds(),
                    request.stepSeconds(),
                    watched.maxDelaySeconds(chain)));
    AudioBackend backend = request.rig().backend(site.audio(), device.backend(kept), chain);
    SessionRequest asked = device.request(kept, List.of(), watched.returns());
    AudioSession session = site.audio().open(backend, request.profile(), asked);
    SessionInfo info = session.info();
    WatchListener listener = WatchListener.inTurn(told);
    WatchJournal journal = new WatchJournal(request, info, site.environment(), listener);
    WatchKeeper keeper =
        new WatchKeeper(
            request.keep().asked() ? Optional.of(journal::keep) : Optional.empty(), listener);
    WatchRecord record =
        new WatchRecord(ZonedDateTime.now(ZoneId.systemDefault()), listener, keeper::happens);
    KnownFacts facts = LiveRun.facts(backend, info);
    List<String> names = new ArrayList<>();
    for (ChainPath path : watched.paths()) {
      names.add(path.name());
      record.add(
          path.name(), info.rate(), plan.windowSeconds(), new WatchTelling(chain, path, facts));
    }
    listener.starts(names, announcement(watched, info));
    Watching watching =
        new Watching(info.rate(), plan, watched, record, System::nanoTime, stop, limitFrames(info));
    Optional<String> ended =
        new WatchSession(site.audio(), backend, request.profile(), asked, stop)
            .until(session, watching);
    watching.finish();
    keeper.finish(stop.isAsked());
    listener.ends();
    return answer(record, keeper, watching, ended, stop.isAsked());
  }

  private long limitFrames(SessionInfo info) {
    return request
        .minutes()
        .map(minutes -> Math.round(minutes * 60 * info.rate().hertz()))
        .orElse(Long.MAX_VALUE);
  }

  private String announcement(WatchedPaths watched, SessionInfo info) {
    String others =
        watched.unwatched().isEmpty()
            ? ""
            : " Not watched, no patch or reference: "
                + String.join(", ", watched.unwatched())
                + ".";
    return String.format(
        Locale.ROOT,
        "Watching %s of %s, windows of %s s each %s s. Plays nothing.%s%s",
        watched.told(),
        info.input(),
        brief(request.windowSeconds()),
        brief(request.stepSeconds()),
        Announcement.alone(info),
        others);
  }

  private static String brief(double seconds) {
    return Numbers.brief(seconds, 3);
  }

  /** A path that was never read is no trustworthy one; who ends it before its time knows that. */
  private static Answer answer(
      WatchRecord record,
      WatchKeeper keeper,
      Watching watching,
      Optional<String> ended,
      boolean stopped) {
    List<Ending> endings = new ArrayList<>();
    endings.add(record.hasMoved() ? Ending.OUTSIDE : Ending.GOOD);
    if (!record.hasReadAll()) {
      endings.add(stopped ? Ending.OUTSIDE : Ending.NOT_TRUSTWORTHY);
    }
    if (ended.isPresent()) {
      endings.add(Ending.SOUND_FAILED);
    }
    if (keeper.hasFailed()) {
      endings.add(Ending.NOT_KEPT);
    }
    return new Answer(Ending.worst(endings), record.summary(watching.lostFrames(), ended));
  }
}
