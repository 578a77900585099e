package dev.loopgauge.job.kept;

import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.chain.file.ChainParser;
import dev.loopgauge.job.BudgetChoice;
import dev.loopgauge.job.ProgramVersion;
import dev.loopgauge.job.TextFile;
import dev.loopgauge.journal.ChainText;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.KeptCapture;
import dev.loopgauge.journal.LoggedDelay;
import dev.loopgauge.journal.SoundCard;
import dev.loopgauge.report.form.ShownDelay;
import dev.loopgauge.report.kind.KeptFacts;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.UUID;

/**
 * Makes entries of results.
 *
 * @param choice what the user said of them
 * @param budget what was compared with
 * @param at when it was measured
 * @param card what was measured with, where there was a session
 * @param capture the recording, where it was kept
 * @param corrected the entry that they replace
 */
record NewEntries(
    KeepChoice choice,
    BudgetChoice budget,
    ZonedDateTime at,
    Optional<SessionInfo> card,
    Optional<KeptCapture> capture,
    Optional<UUID> corrected) {
  /**
   * One result.
   *
   * @param id the id of its entry
   * @param path its path's name, where it has one
   * @param document its document as it is printed
   * @param facts what it is listed by
   */
  record Result(UUID id, Optional<String> path, String document, KeptFacts facts) {}

  /** The entry of a result. */
  Entry of(Result result) {
    KeptFacts facts = result.facts();
    Heading heading =
        new Heading(
            result.id(),
            at.truncatedTo(ChronoUnit.MILLIS),
            choice.show().orElseThrow(),
            choice.when().orElseThrow(),
            result.path(),
            facts.outcome(),
            facts.standing(),
            facts.delay().map(NewEntries::logged),
            corrected);
    return new Entry(
        heading,
        choice.note(),
        choice.setup(),
        result.document(),
        budget.chain().map(NewEntries::chain),
        card.map(NewEntries::card),
        capture,
        ProgramVersion.number());
  }

  static LoggedDelay logged(ShownDelay delay) {
    SampleRate rate = new SampleRate((int) delay.rateHz());
    return new LoggedDelay(new Latency(delay.samples(), rate), delay.uncertaintySamples());
  }

  private static ChainText chain(Path file) {
    return new ChainText(
        file.getFileName().toString(),
        TextFile.read(file, "chain file", ChainParser.LONGEST_FILE, "it was there a moment ago"));
  }

  private static SoundCard card(SessionInfo info) {
    return new SoundCard(
        info.backend(),
        info.output(),
        info.input(),
        info.rate(),
        Math.max(1, info.bufferSamples()));
  }
}
