package dev.loopgauge.job;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.chain.file.ChainParser;
import java.nio.file.Path;

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
}
