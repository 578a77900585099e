package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.ChainFile;
import dev.loopgauge.job.SoFar;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.kept.EarlierReadings;
import dev.loopgauge.job.kept.HeldJournal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.setup.SetupException;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Measures every path of a chain file that has a patch, one after the other in one session.
 *
 * @param request what to measure
 */
public record RoundJob(RoundRequest request) {
  /**
   * Goes round.
   *
   * @param soFar learns of each path as it is done
   * @throws CaptureException when no path could be played
   * @throws JournalException when the round goes on from a journal that can't be read
   * @throws UsageException when no path has a patch, or the request can't be met
   */
  public Answer run(Site site, SoFar soFar)
      throws CaptureException, SetupException, ChainFormatException, JournalException, IOException {
    Chain chain = ChainFile.read(request.chain());
    Optional<Profile> kept = request.live().kept(site.data());
    RoundRecord record = new RoundRecord(request.keep(), chain);
    Map<String, MeasurementDocument> earlier =
        request.goesOn() ? EarlierReadings.of(request.keep(), site.environment()) : Map.of();
    List<ChainPath> due = record.due(earlier);
    if (due.isEmpty()) {
      return nothingDue(record);
    }
    DeviceChoice device = request.live().device();
    Optional<ChannelPair> reference = device.reference(kept, chain);
    AudioBackend backend = request.rig().backend(site.audio(), device.backend(kept), chain);
    Consent asked = Consent.of(site.person(), backend, request.agreed());
    asked.requireSomebody();
    LeftBlocks.check(site, backend, asked);
    List<RoundStop> stops = RoundStop.of(chain, due, reference);
    SessionRequest opened = request(device, kept, stops);
    Profile settings = request.live().settings(kept, stops.get(0).patchings().get(0), chain);
    Consent consent =
        asked.opening(backend, opened, info -> Round.announcement(info, settings, stops));
    try (AudioSession session = site.audio().open(backend, request.live().profile(), opened);
        HeldJournal journal = new HeldJournal(site.environment())) {
      Round round =
          new Round(
              site,
              request,
              chain,
              session,
              opened,
              settings,
              consent,
              LiveRun.facts(backend, session.info()),
              journal,
              record,
              soFar);
      consent.ask(round.announcement(stops));
      return round.go(stops);
    }
  }

  private Answer nothingDue(RoundRecord record) {
    if (record.isEmpty()) {
      throw new UsageException(
          "no path of " + request.chain().getFileName() + " says where it is patched",
          "add patch: { send: 2, return: 2 } to each path; `loopgauge check` names those without");
    }
    return record.answer(Optional.empty());
  }

  private static SessionRequest request(
      DeviceChoice device, Optional<Profile> kept, List<RoundStop> stops) {
    return device.request(
        kept,
        stops.stream().flatMap(stop -> stop.sends().stream()).distinct().toList(),
        stops.stream().flatMap(RoundStop::returns).distinct().toList());
  }
}
