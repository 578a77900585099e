package dev.loopgauge.job.planned;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainCheck;
import dev.loopgauge.chain.CheckFinding;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.ChainFile;
import dev.loopgauge.report.rig.ChainCheckDocument;
import java.nio.file.Path;
import java.util.List;

/**
 * Looks for what is wrong or missing in a chain file, without predicting anything.
 *
 * @param chainFile the chain file
 */
public record CheckJob(Path chainFile) {
  /**
   * Looks. What is found is told and is no failure.
   *
   * @throws ChainFormatException when the file is not a chain
   * @throws dev.loopgauge.job.UsageException when it can't be read
   */
  public Answer run() throws ChainFormatException {
    Chain chain = ChainFile.read(chainFile);
    List<CheckFinding> found = ChainCheck.of(chain).stream().map(this::withoutFolder).toList();
    return Answer.good(ChainCheckDocument.of(name(), chain.name(), found));
  }

  /** Of the file only its name, as in all documents. */
  private CheckFinding withoutFolder(CheckFinding found) {
    return new CheckFinding(
        found.kind(), found.text().replace(chainFile.toString(), name()), found.hint());
  }

  private String name() {
    return String.valueOf(chainFile.getFileName());
  }
}
