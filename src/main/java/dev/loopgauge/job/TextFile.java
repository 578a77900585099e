package dev.loopgauge.job;

import dev.loopgauge.capture.FileTrouble;
import dev.loopgauge.capture.WholeFile;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;

/** Reads and writes small files of text. */
public final class TextFile {
  /** No character takes more bytes than this in UTF-8. */
  private static final int MOST_BYTES_PER_CHARACTER = 4;

  private TextFile() {}

  /**
   * The text of a file.
   *
   * @param what what the file is expected to be, such as a chain file
   * @param mostCharacters a file that is surely longer is not even read
   * @param ifMissing what to try where there is none
   * @throws UsageException when there is no such file, it can't be read or isn't text in UTF-8
   */
  public static String read(Path file, String what, int mostCharacters, String ifMissing) {
    if (!Files.exists(file)) {
      throw new UsageException("no " + what + " " + file, ifMissing);
    }
    if (!Files.isRegularFile(file)) {
      throw new UsageException(
          "expected a %s, found no file but something else: %s".formatted(what, file),
          "name the file itself");
    }
    try {
      if (Files.size(file) > (long) mostCharacters * MOST_BYTES_PER_CHARACTER) {
        throw noText(file, what, "found " + Files.size(file) + " bytes");
      }
      ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(file));
      return StandardCharsets.UTF_8.newDecoder().decode(bytes).toString();
    } catch (CharacterCodingException e) {
      throw noText(file, what, "found something that is no UTF-8");
    } catch (IOException e) {
      throw new UsageException(
          "can't read " + file + ": " + FileTrouble.reason(e), "may you read it?");
    }
  }

  private static UsageException noText(Path file, String what, String found) {
    return new UsageException(
        "expected a %s, text in UTF-8, %s: %s".formatted(what, found, file),
        "is it the right file?");
  }

  /**
   * Makes sure that a new file can have a name, before any work for it.
   *
   * @throws UsageException when there is one of that name already
   */
  public static void requireNew(Path file) {
    if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      throw isThere(file);
    }
  }

  /**
   * Writes a new file, whole or not at all.
   *
   * @throws UsageException when there is one of that name already, or it can't be written
   */
  public static void writeNew(Path file, String text) {
    try {
      WholeFile.at(file).create(out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
    } catch (FileAlreadyExistsException e) {
      throw isThere(file);
    } catch (IOException e) {
      throw new UsageException(
          "can't write " + file + ": " + FileTrouble.reason(e),
          "does its folder exist, may you write?");
    }
  }

  private static UsageException isThere(Path file) {
    return new UsageException(
        file + " exists already, and nothing is overwritten", "give another name");
  }
}
