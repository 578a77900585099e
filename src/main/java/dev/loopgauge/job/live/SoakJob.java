package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.job.Ending;
import dev.loopgauge.job.SoFar;
import dev.loopgauge.measure.Soak;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.measured.SoakDocument;
import dev.loopgauge.setup.CalibrationStore;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.setup.SetupException;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.HostCheck;
import dev.loopgauge.verify.verdict.OverallVerdict;
import dev.loopgauge.verify.verdict.SoakJudge;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Measures one path, take after take in one session, and keeps count of what happened.
 *
 * @param request what each take measures; it plays softly unless it names a level
 * @param minutes for how long, in minutes of sound, above 0
 */
public record SoakJob(LiveRequest request, double minutes) {
  /**
   * Goes on until the time is over, the person presses Enter, or the sound is gone.
   *
   * @param soFar learns of each take
   * @throws CaptureException when not even the first take could be recorded
   */
  public Answer run(Site site, SoFar soFar)
      throws CaptureException, SetupException, ChainFormatException, IOException {
    return LiveRun.kept(site, request, soFar, this::soaked);
  }

  private Answer soaked(LiveRun run, Consumer<Answer> soFar)
      throws CaptureException, SetupException, IOException {
    Profile loud = run.settings();
    Profile soft = loud.with(request.live().stimulus().soft(loud.plan()));
    run.consent().requireSomebody();
    LiveTarget target = run.target(soft);
    Consent consent = target.opening(run.consent(), 0, again());
    try (AudioSession session = target.open()) {
      return soaked(
          target.reading(session, consent),
          run.chosen(session.info()),
          run.site().data().calibrations(),
          soFar);
    }
  }

  private Answer soaked(
      LiveReading live, Optional<ChosenPath> chosen, CalibrationStore store, Consumer<Answer> soFar)
      throws CaptureException, SetupException, IOException {
    Consent consent = live.consent();
    Repeatable reading = live.repeatable(store);
    Soak soak = new Soak(live.takeSeconds());
    consent.note(reading.notes());
    consent.ask(live.announcement() + again());
    if (consent.person().present()) {
      consent.say("Enter ends it with what was seen so far.");
    }
    Optional<CaptureException> end =
        new Takes(reading, soak)
            .until(
                () -> soak.seconds() >= minutes * 60 || isEnded(consent),
                () -> {
                  consent.say(told(soak));
                  soFar.accept(answer(soak, Optional.of(SoakDocument.STOPPED), chosen));
                });
    return answer(soak, end.map(CaptureException::getMessage), chosen);
  }

  private String again() {
    return " Again and again for " + time(minutes) + ".";
  }

  private Answer answer(Soak soak, Optional<String> end, Optional<ChosenPath> chosen) {
    SoakDocument document = document(soak, end, chosen);
    boolean stayed = end.isEmpty() || end.get().equals(SoakDocument.STOPPED);
    Ending verdict =
        soak.level().isEmpty() ? Ending.NOT_TRUSTWORTHY : Answer.ending(document.verdict());
    return new Answer(
        Ending.worst(List.of(verdict, stayed ? Ending.GOOD : Ending.OUTSIDE)), document);
  }

  private SoakDocument document(Soak soak, Optional<String> end, Optional<ChosenPath> chosen) {
    Optional<Estimate> level = soak.level().map(read -> new Estimate.Found(read, List.of()));
    Optional<Comparison> comparison = chosen.flatMap(path -> level.flatMap(path::compare));
    Optional<HostCheck> check = level.flatMap(request.reported()::check);
    OverallVerdict verdict =
        judge(soak).verdict(comparison, check, chosen.flatMap(ChosenPath::picture));
    return SoakDocument.of(soak, minutes, end, verdict, comparison, check);
  }

  private static SoakJudge judge(Soak soak) {
    return new SoakJudge(
        soak.level(),
        soak.count(Soak.Kind.STEP),
        soak.count(Soak.Kind.DROPOUT) + soak.count(Soak.Kind.FAILED),
        soak.count(Soak.Kind.UNREADABLE),
        soak.drift());
  }

  private static boolean isEnded(Consent consent) throws IOException {
    return consent.person().present() && consent.person().hasAnswered();
  }

  private String told(Soak soak) {
    String delay =
        soak.level()
            .map(level -> Numbers.plain(level.delay().samples(), 2) + " samples")
            .orElse("no delay read");
    int odd = soak.oddTakes();
    return "%s of %s: %s, %s"
        .formatted(
            time(soak.seconds() / 60),
            time(minutes),
            delay,
            odd == 0 ? "clean" : "something happened in " + odd + " takes");
  }

  private static String time(double minutes) {
    return Numbers.brief(minutes, 1) + " min";
  }
}
