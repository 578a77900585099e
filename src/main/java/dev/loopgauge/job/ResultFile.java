package dev.loopgauge.job;

import dev.loopgauge.report.form.Fields;
import dev.loopgauge.report.form.Json;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A document of this program, kept in a file, or a part of one. */
public final class ResultFile {
  /** Far more than any document has; keeps other files from filling the memory, in bytes. */
  private static final long LARGEST = 16_000_000;

  private final Path file;
  private final Fields values;

  private ResultFile(Path file, Fields values) {
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
        return new ResultFile(file, new Fields(Json.read(Files.readString(file))));
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
  public Map<?, ?> values() {
    return values.values();
  }

  /** The part under a key; empty where it is null or left out. */
  public Optional<ResultFile> part(String key) {
    return values.part(key).map(part -> new ResultFile(file, part));
  }

  /** The parts in the list under a key; none where there is no list. */
  public List<ResultFile> parts(String key) {
    return values.parts(key).stream().map(part -> new ResultFile(file, part)).toList();
  }

  /** The text under a key, where there is one. */
  public Optional<String> text(String key) {
    return values.text(key);
  }

  /** The number under a key, where there is one. */
  public Optional<Double> optionalNumber(String key) {
    return values.number(key);
  }

  /**
   * The number under a key.
   *
   * @throws UsageException when there is none
   */
  public double number(String key) {
    return optionalNumber(key)
        .orElseThrow(() -> lacks("a number '" + key + "'", "is it the right document?"));
  }

  /** What to say when something is missing from the file. */
  public UsageException lacks(String what, String hint) {
    return new UsageException("expected " + what + " in " + file + ", found none", hint);
  }
}
