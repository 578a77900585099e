package dev.loopgauge.job.recorded;

import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.BudgetChoice;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.job.SeriesResult;
import dev.loopgauge.job.TextFile;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.verify.SeriesFormatException;
import dev.loopgauge.verify.SeriesParser;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Works out how many blocks, plus a fixed part, a host adds, from a table of readings.
 *
 * @param table the readings, CSV
 * @param rate the rate that the rig ran at; empty where the chain file says it
 * @param budget whose path the result is compared with
 * @param chainFile where to write the result as a chain file
 */
public record SeriesTableJob(
    Path table, Optional<SampleRate> rate, BudgetChoice budget, Optional<Path> chainFile) {
  /**
   * Reads the table.
   *
   * @throws SeriesFormatException when the text is no such table
   * @throws UsageException when the file can't be read, or the rate is unknown or said twice
   */
  public Answer run() throws SeriesFormatException, ChainFormatException {
    Optional<ChosenPath> chosen = budget.chosen();
    SampleRate atRate = rate(chosen);
    String text =
        TextFile.read(
            table,
            "table of readings",
            SeriesParser.LONGEST_FILE,
            "write one: the first line is block-size,delay-ms and the next 64,7.2");
    return new SeriesResult(
            SeriesParser.parse(text, table.toString(), atRate),
            List.of(),
            chosen,
            "block series of " + table)
        .answer(chainFile);
  }

  private SampleRate rate(Optional<ChosenPath> chosen) {
    Optional<SampleRate> stated = chosen.map(c -> c.chain().rate());
    if (rate.isPresent() && stated.isPresent() && !rate.equals(stated)) {
      throw new UsageException(
          "--sample-rate %d, but the chain file says %d"
              .formatted(rate.get().hertz(), stated.get().hertz()),
          "which one did the rig run at? leave the option out, or mend the chain file");
    }
    return rate.or(() -> stated)
        .orElseThrow(
            () ->
                new UsageException(
                    "expected --sample-rate, found none", "add, for example, --sample-rate 48000"));
  }
}
