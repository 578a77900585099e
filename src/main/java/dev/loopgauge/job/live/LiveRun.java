package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.BlockSizeServer;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.job.SoFar;
import dev.loopgauge.job.kept.JournalKeeper;
import dev.loopgauge.job.kept.PackedRecording;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.setup.SetupException;
import dev.loopgauge.verify.KnownFacts;
import java.io.IOException;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * A live job about to run: its request with the profile, the path and the back end found.
 *
 * @param site where it runs
 * @param request what was asked for
 * @param kept the profile under the request
 * @param chosen the path to compare with
 * @param backend measures it
 * @param consent asked before each sound
 */
record LiveRun(
    Site site,
    LiveRequest request,
    Optional<Profile> kept,
    Optional<ChosenPath> chosen,
    AudioBackend backend,
    Consent consent) {
  /** What is done with it. */
  interface Work {
    /** Measures. */
    Answer of(LiveRun run) throws CaptureException, SetupException, IOException;
  }

  /**
   * Does the work, and keeps what it came to where that was asked.
   *
   * @throws dev.loopgauge.job.UsageException when what was asked for is missing something
   */
  static Answer kept(Site site, LiveRequest request, Work work)
      throws CaptureException, SetupException, ChainFormatException, IOException {
    return kept(site, request, new SoFar(), (run, soFar) -> work.of(run));
  }

  /** What is done with it where it may be stopped. */
  interface LongWork {
    /**
     * Measures.
     *
     * @param soFar to be told what there is to keep if it were stopped now
     */
    Answer of(LiveRun run, Consumer<Answer> soFar)
        throws CaptureException, SetupException, IOException;
  }

  /** The same where what was done so far is kept when the program is told to stop. */
  static Answer kept(Site site, LiveRequest request, SoFar soFar, LongWork work)
      throws CaptureException, SetupException, ChainFormatException, IOException {
    SessionTap tap = new SessionTap();
    Site tapped =
        new Site(site.audio().tappedBy((s, asked) -> tap.on(s)), site.person(), site.environment());
    JournalKeeper keeper =
        new JournalKeeper(request.keep(), request.budget(), site.environment(), site.person());
    Answer answer =
        work.of(
            of(tapped, request),
            now -> soFar.is(() -> keeper.keep(now, tap.info(), Optional.empty())));
    soFar.finish();
    Optional<PackedRecording> recording =
        tap.capture()
            .filter(heard -> request.keep().keepCapture())
            .map(heard -> PackedRecording.of(heard.returns()));
    return keeper.keep(answer, tap.info(), recording);
  }

  private static LiveRun of(Site site, LiveRequest request)
      throws CaptureException, SetupException, ChainFormatException, IOException {
    Optional<Profile> kept = request.live().kept(site.data());
    DeviceChoice device = request.live().device();
    Optional<ChosenPath> chosen = request.keep().chosen(request.budget());
    AudioBackend backend =
        request
            .rig()
            .backend(site.audio(), device.backend(kept), chosen, device.plug(kept, chosen));
    Consent consent = Consent.of(site.person(), backend, request.agreed());
    LeftBlocks.check(site, backend, consent);
    return new LiveRun(site, request, kept, chosen, backend, consent);
  }

  /** The path to compare with, once it is known what the session runs on. */
  Optional<ChosenPath> chosen(SessionInfo opened) {
    return chosen.map(path -> path.knowing(facts(backend, opened)));
  }

  /** An audio server says for sure at which block size and rate it runs. */
  static KnownFacts facts(AudioBackend backend, SessionInfo opened) {
    return backend instanceof BlockSizeServer
        ? KnownFacts.of(opened.bufferSamples(), opened.rate())
        : KnownFacts.NONE;
  }

  /** All that was chosen. */
  Profile settings() {
    return request.live().settings(kept, chosen);
  }

  /** What to say of where the path is plugged in. */
  Optional<String> elsewhere() {
    return chosen.flatMap(
        path ->
            new ChainPatching(path.chain()).elsewhere(path.path(), settings().patching().rig()));
  }

  /** What is measured again and again. */
  LiveTarget target(Profile settings) {
    return new LiveTarget(
        site.audio(),
        backend,
        request.live().profile(),
        settings,
        request.arrival(),
        site.data().calibrations());
  }
}
