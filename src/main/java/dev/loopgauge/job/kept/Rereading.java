package dev.loopgauge.job.kept;

import dev.loopgauge.capture.FileTrouble;
import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.estimate.reading.LongestDelay;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Method;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.LoggedDelay;
import dev.loopgauge.report.kind.KeptFacts;
import dev.loopgauge.report.logged.KeptDocument;
import dev.loopgauge.report.measured.MeasurementDocument;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Reads the recordings of entries whose number is of an older edition of what the delay means, by
 * the edition that counts now. A live measurement is kept as the path's return and, in channel 2,
 * the reference's; a recording with two channels as reference and return. Older editions took no
 * skew off, so none is missing here.
 *
 * @param recordings the folder of the recordings
 */
public record Rereading(Path recordings) {
  /** As `analyze` and `measure` search. */
  private static final double LEAST_SEARCHED = 1;

  /** How much further than the kept delay is searched, in seconds. */
  private static final double MARGIN = 0.5;

  private static final int CHANNELS = 2;

  /** What came of it. */
  public sealed interface Result {}

  /** A number by the edition that counts now, in the place of the kept one. */
  public record Read(Heading heading, KeptDocument document) implements Result {}

  /**
   * No number.
   *
   * @param why in half a sentence
   */
  public record Unread(String why) implements Result {}

  /** The entry's number is by the edition that counts now, or it has none. */
  public record Current() implements Result {}

  /** Reads the recording of an entry, where its number is of an older edition. */
  public Result of(Entry entry) {
    KeptDocument kept = KeptDocument.of(entry);
    if (entry.heading().delay().isEmpty()
        || kept.edition().filter(edition -> !edition.equals(Measurement.DEFINITION)).isEmpty()) {
      return new Current();
    }
    KeptRecordings folder = new KeptRecordings(recordings);
    if (entry.capture().isEmpty()) {
      return new Unread("no recording was kept");
    }
    Optional<Path> file = folder.file(entry);
    if (file.isEmpty()) {
      return new Unread("its recording is missing");
    }
    Optional<String> wrong = KeptRecordings.wrong(file.get(), entry.capture().get());
    return wrong.isPresent() ? new Unread(wrong.get()) : read(entry, kept, file.get());
  }

  private static Result read(Entry entry, KeptDocument kept, Path file) {
    try (UnpackedRecording recording = UnpackedRecording.of(file)) {
      if (recording.channels() != CHANNELS || !holdsReference(kept)) {
        return new Unread("its recording lacks the reference");
      }
      boolean live = kept.command().filter("measure"::equals).isPresent();
      Estimate estimate =
          recording.delay(live ? 2 : 1, live ? 1 : 2, searched(entry.heading().delay().get()));
      return read(entry, estimate);
    } catch (AudioFileException e) {
      return new Unread("its recording is no WAV file");
    } catch (IOException e) {
      return new Unread("its recording can't be read: " + FileTrouble.reason(e));
    }
  }

  private static boolean holdsReference(KeptDocument kept) {
    boolean both = kept.command().filter(List.of("measure", "analyze")::contains).isPresent();
    return both && kept.method().filter(Method.REFERENCED.label()::equals).isPresent();
  }

  private static double searched(LoggedDelay delay) {
    double needed = Math.abs(delay.delay().seconds()) + MARGIN;
    return Math.min(LongestDelay.SECONDS, Math.max(LEAST_SEARCHED, needed));
  }

  private static Result read(Entry entry, Estimate estimate) {
    MeasurementDocument document =
        MeasurementDocument.of(
            "analyze", ChosenPath.judge(Optional.empty(), estimate, Optional.empty()), List.of());
    Optional<LoggedDelay> delay = KeptFacts.of(document).delay().map(NewEntries::logged);
    return delay.isEmpty()
        ? new Unread("its recording gives no number that can be trusted")
        : new Read(withDelay(entry.heading(), delay), KeptDocument.of(document.json()));
  }

  private static Heading withDelay(Heading h, Optional<LoggedDelay> delay) {
    return new Heading(
        h.id(),
        h.at(),
        h.show(),
        h.when(),
        h.path(),
        h.outcome(),
        h.standing(),
        delay,
        h.corrects(),
        h.foreignZone());
  }
}
