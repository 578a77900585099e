package dev.loopgauge.screen.desk;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.chain.file.ChainParser;
import dev.loopgauge.job.ChainFile;
import dev.loopgauge.job.TextFile;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.planned.BudgetJob;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.report.budget.BudgetDocument;
import dev.loopgauge.screen.state.Situation.Rig;
import dev.loopgauge.screen.state.Trouble;
import dev.loopgauge.signal.Hinted;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.Optional;

/** The chain file, read again when it changes. */
final class RigFile {
  private final Path file;
  private FileTime seen;
  private Rig rig;

  /**
   * Reads it.
   *
   * @throws ChainFormatException when it is no chain
   * @throws UsageException when it can't be read
   */
  RigFile(Path file) throws ChainFormatException {
    this.file = file;
    seen = changed();
    rig = read();
  }

  /** As it was read last. */
  synchronized Rig rig() {
    return rig;
  }

  /** Reads it again where it has changed; whether it had. One that can't be read is told of. */
  synchronized boolean refresh() {
    FileTime now = changed();
    if (now.equals(seen)) {
      return false;
    }
    seen = now;
    try {
      rig = read();
    } catch (ChainFormatException | UsageException e) {
      Hinted hinted = (Hinted) e;
      Trouble trouble =
          new Trouble(
              "the chain file has changed and can't be used: " + e.getMessage(), hinted.hint());
      rig = rig.troubled(trouble);
    }
    return true;
  }

  private FileTime changed() {
    try {
      return Files.getLastModifiedTime(file);
    } catch (IOException e) {
      return FileTime.fromMillis(0);
    }
  }

  private Rig read() throws ChainFormatException {
    String text =
        TextFile.read(file, "chain file", ChainParser.LONGEST_FILE, "`loopgauge demo` writes one");
    Chain chain = ChainFile.read(file);
    return Rig.of(text, chain, budget(file));
  }

  private static BudgetDocument budget(Path file) throws ChainFormatException {
    BudgetJob job =
        new BudgetJob(
            file,
            List.of(),
            Optional.empty(),
            Optional.empty(),
            List.of(),
            PictureRule.EBU_R37,
            false);
    return (BudgetDocument) job.run().document();
  }
}
