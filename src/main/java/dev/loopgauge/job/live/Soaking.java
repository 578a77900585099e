package dev.loopgauge.job.live;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.cli.option.HostCheckOptions;
import dev.loopgauge.cli.terminal.Answer;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.estimate.Estimate;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.measure.Soak;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.measured.SoakDocument;
import dev.loopgauge.setup.CalibrationStore;
import dev.loopgauge.setup.SetupException;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/**
 * {@code measure --soak MINUTES}: measures take after take in one session and keeps count.
 *
 * @param live what each take measures; asks before the first
 * @param minutes for how long, in minutes of sound, above 0
 * @param chosen the path that the delay is held against, where one was named
 * @param host what was said to be reported
 */
public record Soaking(
    LiveReading live, double minutes, Optional<ChosenPath> chosen, HostCheckOptions host) {
  /**
   * Goes on until the time is over, somebody presses Enter, or the sound is gone.
   *
   * @throws CaptureException when not even the first take could be recorded
   */
  public Answer answer(CalibrationStore store)
      throws CaptureException, SetupException, IOException {
    LiveReading.Repeatable reading = live.repeatable(store);
    Soak soak = new Soak(live.profile().plan().takeSeconds(live.session().info()));
    live.consent().ask(live.announcement() + " Again and again for " + time(minutes) + ".");
    if (live.consent().console().terminal()) {
      live.consent().say("Enter ends it with what was seen so far.");
    }
    Optional<CaptureException> end =
        new Takes(reading, soak)
            .until(() -> soak.seconds() >= minutes * 60 || isEnded(), () -> tell(soak));
    SoakDocument document = document(soak, end.map(CaptureException::getMessage));
    return new Answer(document.isGood() ? ExitCode.GOOD : ExitCode.OUTSIDE, document);
  }

  private SoakDocument document(Soak soak, Optional<String> end) {
    Optional<Estimate> level = soak.level().map(read -> new Estimate.Found(read, List.of()));
    return new SoakDocument(
        soak,
        minutes,
        end,
        chosen.flatMap(path -> level.flatMap(path::compare)),
        level.flatMap(host::check));
  }

  private boolean isEnded() throws IOException {
    return live.consent().console().terminal() && live.consent().console().in().ready();
  }

  private void tell(Soak soak) {
    String delay =
        soak.level()
            .map(level -> Numbers.plain(level.delay().samples(), 2) + " samples")
            .orElse("no delay read");
    int odd = soak.oddTakes();
    live.consent()
        .say(
            "%s of %s: %s, %s"
                .formatted(
                    time(soak.seconds() / 60),
                    time(minutes),
                    delay,
                    odd == 0 ? "clean" : "something happened in " + odd + " takes"));
  }

  private static String time(double minutes) {
    return Numbers.brief(minutes, 1) + " min";
  }
}
