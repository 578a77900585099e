package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.BudgetChoice;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.job.SoFar;
import dev.loopgauge.job.kept.HeldJournal;
import dev.loopgauge.job.kept.JournalKeeper;
import dev.loopgauge.job.kept.PackedRecording;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.measure.Playing;
import dev.loopgauge.report.measured.MeasurementDocument;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.setup.SetupException;
import dev.loopgauge.verify.KnownFacts;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/**
 * A round under way.
 *
 * @param session open for all stops
 * @param opened the channels it was opened with
 * @param settings what is played at each stop
 * @param facts what is known of the rig for sure
 * @param journal where paths are kept
 * @param record what it has come to so far
 * @param soFar learns of each path as it is done
 */
record Round(
    Site site,
    RoundRequest request,
    Chain chain,
    AudioSession session,
    SessionRequest opened,
    Profile settings,
    Consent consent,
    KnownFacts facts,
    HeldJournal journal,
    RoundRecord record,
    SoFar soFar) {
  /** What to do about a stop at which nothing was heard. */
  private enum Choice {
    AGAIN,
    SKIP,
    STOP
  }

  /** All that is about to be played. */
  String announcement(List<RoundStop> stops) {
    return announcement(session.info(), settings, stops);
  }

  /** The same before the session is open. */
  static String announcement(SessionInfo info, Profile settings, List<RoundStop> stops) {
    List<Integer> sends = stops.stream().flatMap(stop -> stop.sends().stream()).distinct().toList();
    boolean referenced = settings.patching().reference().isPresent();
    double seconds = stops.size() * settings.plan().takeSeconds(info, referenced);
    return Announcement.ofRound(info, sends, settings.plan(), stops.size(), seconds);
  }

  /**
   * Measures all stops.
   *
   * @throws CaptureException when none could be played
   */
  Answer go(List<RoundStop> stops) throws CaptureException, SetupException, IOException {
    Optional<String> stopped = Optional.empty();
    Optional<CaptureException> lost = Optional.empty();
    for (RoundStop stop : stops) {
      try {
        if (!measured(stop)) {
          stopped = Optional.of("somebody ended the round");
          break;
        }
      } catch (CaptureException e) {
        lost = Optional.of(e);
        failed(stop, e);
        if (!Takes.PASSING.contains(e.kind())) {
          stopped = Optional.of(e.getMessage());
          break;
        }
      }
    }
    if (record.isEmpty() && lost.isPresent()) {
      throw lost.get();
    }
    soFar.finish();
    return record.answer(stopped);
  }

  private void failed(RoundStop stop, CaptureException e) {
    for (ChainPath path : stop.paths()) {
      record.failed(path.name(), e.getMessage());
      consent.say(row(path, "not measured: " + e.getMessage()));
    }
  }

  /** Measures one stop, again where that is wanted; false where the round shall end. */
  private boolean measured(RoundStop stop) throws CaptureException, SetupException, IOException {
    StopSession heard = new StopSession(session, opened, stop.sends());
    boolean all = true;
    for (int i = 0; i < stop.paths().size(); i++) {
      all &= read(stop.paths().get(i), stop.patchings().get(i), heard);
    }
    if (all) {
      keep(stop, heard);
      return true;
    }
    Choice choice = choice();
    if (choice == Choice.AGAIN) {
      return measured(stop);
    }
    keep(stop, heard);
    return choice == Choice.SKIP;
  }

  /** Reads one path; false where it gives no number. */
  private boolean read(ChainPath path, Patching patching, StopSession heard)
      throws CaptureException, SetupException, IOException {
    LiveReading reading =
        new LiveReading(
            heard.of(patching),
            settings.with(patching),
            request.arrival(),
            consent.agreed(),
            Playing.AGAIN);
    Repeatable way = reading.repeatable(site.data().calibrations());
    Estimate estimate = way.take();
    ChosenPath chosen = new ChosenPath(chain, path, request.allowSamples(), facts);
    MeasurementDocument document =
        MeasurementDocument.of("measure", chosen.judge(estimate, Optional.empty()), way.notes());
    record.done(path.name(), Answer.measured(document));
    consent.say(row(path, document.line()));
    return document.measurement().isPresent();
  }

  private static String row(ChainPath path, String words) {
    return path.name() + "  " + words;
  }

  /** Nobody to ask: the path stays undecided and the round goes on. */
  private Choice choice() throws IOException {
    if (!consent.person().takesQuestions()) {
      return Choice.SKIP;
    }
    while (true) {
      consent.say("Nothing trustworthy heard: again (a), skip (s) or stop (q)?");
      Optional<String> answer = consent.person().answer();
      if (answer.isEmpty()) {
        return Choice.STOP;
      }
      switch (answer.get().strip()) {
        case "a", "again" -> {
          return Choice.AGAIN;
        }
        case "s", "skip" -> {
          return Choice.SKIP;
        }
        case "q", "stop" -> {
          return Choice.STOP;
        }
        default -> consent.say("Type a, s or q, then Enter.");
      }
    }
  }

  /** Keeps what a stop came to, so that nothing is lost whatever happens at the next. */
  private void keep(RoundStop stop, StopSession heard) {
    for (int i = 0; i < stop.paths().size(); i++) {
      String path = stop.paths().get(i).name();
      Optional<PackedRecording> recording =
          heard
              .heard(stop.patchings().get(i))
              .filter(capture -> request.keep().keepCapture())
              .map(Capture::returns)
              .map(PackedRecording::of);
      BudgetChoice budget =
          new BudgetChoice(Optional.of(request.chain()), Optional.of(path), request.allowSamples());
      JournalKeeper keeper =
          new JournalKeeper(request.keep(), budget, site.environment(), site.person()).in(journal);
      record.done(path, keeper.keep(record.of(path), Optional.of(session.info()), recording));
    }
    Answer now = record.answer(Optional.of("it was interrupted"));
    soFar.is(() -> now);
  }
}
