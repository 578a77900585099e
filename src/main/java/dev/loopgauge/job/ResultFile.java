package dev.loopgauge.job;

import dev.loopgauge.report.form.Json;
import dev.loopgauge.report.form.Unbinder;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;

/** A document of this program, kept in a file. */
public final class ResultFile {
  /** Far more than any document has; keeps other files from filling the memory, in bytes. */
  private static final long LARGEST = 16_000_000;

  private final Path file;
  private final Map<String, Object> values;

  private ResultFile(Path file, Map<String, Object> values) {
    this.file = file;
    this.values = values;
  }

  /**
   * The document in a file.
   *
   * @param command what makes such documents, named in hints
   * @throws UsageException when there is no such file, it can't be read, or is no document
   */
  public static ResultFile read(Path file, String command) {
    try {
      if (Files.size(file) <= LARGEST) {
        return new ResultFile(file, Json.read(Files.readString(file)));
      }
    } catch (NoSuchFileException e) {
      throw new UsageException("no file " + file, "check the name and the folder");
    } catch (IOException e) {
      throw new UsageException(
          "expected a JSON document in " + file + ", found something else",
          "write one with `loopgauge " + command + " --json > FILE`");
    }
    throw new UsageException(
        "expected a JSON document, found over " + LARGEST + " bytes in " + file,
        "is it the right file?");
  }

  /** All of it by its keys. */
  public Map<String, Object> values() {
    return values;
  }

  /**
   * All of it as a record.
   *
   * @param kind a record that can be without any of its components
   */
  public <T extends Record> T as(Class<T> kind) {
    return Unbinder.read(kind, values).orElseThrow();
  }

  /**
   * A number of it.
   *
   * @param key the number's key
   * @throws UsageException when there is none
   */
  public double number(Optional<BigDecimal> found, String key) {
    return found
        .orElseThrow(() -> lacks("a number '" + key + "'", "is it the right document?"))
        .doubleValue();
  }

  /** What to say when something is missing from the file. */
  public UsageException lacks(String what, String hint) {
    return new UsageException("expected " + what + " in " + file + ", found none", hint);
  }
}
