package dev.loopgauge.job;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.file.ChainFormatException;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Which budget a measurement is compared with.
 *
 * @param chain the chain file; empty for none
 * @param path the path in it
 * @param allowSamples the extra difference to allow, in samples, 0 or more
 */
public record BudgetChoice(Optional<Path> chain, Optional<String> path, double allowSamples) {
  /** No budget to compare with. */
  public static final BudgetChoice NONE = new BudgetChoice(Optional.empty(), Optional.empty(), 1);

  /**
   * The chosen path; empty where no chain is named.
   *
   * @throws UsageException when the file can't be read, or a path is named without a chain or the
   *     other way round
   * @throws ChainFormatException when the file is not a chain
   */
  public Optional<ChosenPath> chosen() throws ChainFormatException {
    if (chain.isEmpty()) {
      if (path.isPresent()) {
        throw new UsageException(
            "--path " + path.get() + " without --chain", "name the chain file it is in");
      }
      return Optional.empty();
    }
    Chain read = ChainFile.read(chain.get());
    if (path.isEmpty()) {
      throw new UsageException(
          "--chain " + chain.get() + " without --path",
          "say which path: " + String.join(", ", read.paths().keySet()));
    }
    ChainPath found = read.path(path.get());
    return Optional.of(new ChosenPath(read, found, allowSamples));
  }
}
