package dev.loopgauge.cli;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainFormatException;
import dev.loopgauge.chain.ChainParser;
import dev.loopgauge.chain.ChainPath;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Reads chain files from disk. */
final class ChainFile {
  /** No character takes more bytes than this in UTF-8. */
  private static final int MOST_BYTES_PER_CHARACTER = 4;

  private ChainFile() {}

  /**
   * The chain in a file.
   *
   * @throws UsageException when there is no such file, it can't be read or isn't text
   * @throws ChainFormatException when the text is not a chain
   */
  static Chain read(Path file) throws ChainFormatException {
    return ChainParser.parse(text(file), file.toString());
  }

  /**
   * The path that the options choose; empty where they name no chain.
   *
   * @throws UsageException as {@link #read}, or when a path is named without a chain
   * @throws ChainFormatException as {@link #read}
   */
  static Optional<ChosenPath> chosen(BudgetOptions options) throws ChainFormatException {
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

  private static String text(Path file) {
    if (!Files.exists(file)) {
      throw new UsageException(
          "no chain file " + file, "check the name and the folder; `loopgauge demo` writes one");
    }
    if (!Files.isRegularFile(file)) {
      throw new UsageException(
          "expected a chain file, found no file but something else: " + file,
          "name the YAML file itself");
    }
    try {
      if (Files.size(file) > (long) ChainParser.LONGEST_FILE * MOST_BYTES_PER_CHARACTER) {
        throw noText(file, "found " + Files.size(file) + " bytes");
      }
      ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(file));
      return StandardCharsets.UTF_8.newDecoder().decode(bytes).toString();
    } catch (CharacterCodingException e) {
      throw noText(file, "found something that is no UTF-8");
    } catch (IOException e) {
      throw new UsageException("can't read " + file + ": " + e.getMessage(), "may you read it?");
    }
  }

  private static UsageException noText(Path file, String found) {
    return new UsageException(
        "expected a chain file, text in UTF-8, " + found + ": " + file, "is it the right file?");
  }
}
