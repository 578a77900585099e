package dev.loopgauge.job;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.chain.file.ChainParser;
import dev.loopgauge.cli.option.BudgetOptions;
import dev.loopgauge.cli.terminal.UsageException;
import java.nio.file.Path;
import java.util.Optional;

/** Reads chain files from disk. */
public final class ChainFile {
  private ChainFile() {}

  /**
   * The chain in a file.
   *
   * @throws UsageException when there is no such file, it can't be read or isn't text
   * @throws ChainFormatException when the text is not a chain
   */
  public static Chain read(Path file) throws ChainFormatException {
    String text =
        TextFile.read(
            file,
            "chain file",
            ChainParser.LONGEST_FILE,
            "check the name and the folder; `loopgauge demo` writes one");
    return ChainParser.parse(text, file.toString());
  }

  /**
   * The path that the options choose; empty where they name no chain.
   *
   * @throws UsageException as {@link #read}, or when a path is named without a chain
   * @throws ChainFormatException as {@link #read}
   */
  public static Optional<ChosenPath> chosen(BudgetOptions options) throws ChainFormatException {
    if (options.chain.isEmpty()) {
      if (options.path.isPresent()) {
        throw new UsageException(
            "--path " + options.path.get() + " without --chain", "name the chain file it is in");
      }
      return Optional.empty();
    }
    Chain chain = read(options.chain.get());
    if (options.path.isEmpty()) {
      throw new UsageException(
          "--chain " + options.chain.get() + " without --path",
          "say which path: " + String.join(", ", chain.paths().keySet()));
    }
    ChainPath path = chain.path(options.path.get());
    return Optional.of(new ChosenPath(chain, path, options.allowSamples));
  }
}
