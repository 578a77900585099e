package dev.loopgauge.journal.store;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A running {@link WriterProcess}. */
final class Writer {
  /** More than any writer gets done before it is killed. */
  static final long ENDLESS = 1_000_000;

  private final Process process;
  private final BufferedReader out;
  private final List<String> said = new ArrayList<>();

  private Writer(Process process) {
    this.process = process;
    this.out =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }

  /** Starts one, with what its environment must hold. */
  static Writer start(String place, long first, long count, Map<String, String> environment)
      throws IOException {
    ProcessBuilder builder = new ProcessBuilder(command(place, first, count));
    builder.redirectError(ProcessBuilder.Redirect.INHERIT).environment().putAll(environment);
    return new Writer(builder.start());
  }

  /** The command line that starts one. */
  static List<String> command(String place, long first, long count) {
    return List.of(
        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "-XX:TieredStopAtLevel=1",
        "-XX:+UseSerialGC",
        "-cp",
        System.getProperty("java.class.path"),
        WriterProcess.class.getName(),
        place,
        "" + first,
        "" + count);
  }

  /** Waits until it has stored an entry, or has ended. */
  void awaitFirst() throws IOException {
    String line = out.readLine();
    if (line != null) {
      said.add(line);
    }
  }

  /** Kills it, by the signal that no process can heed; gives the number of entries reported. */
  long kill() throws IOException, InterruptedException {
    // Process.destroyForcibly would also throw away what it said last.
    process.toHandle().destroyForcibly();
    process.waitFor();
    return stored();
  }

  /**
   * Waits for its end; gives the number of entries reported.
   *
   * @throws IOException when it said that one can't be stored
   */
  long stored() throws IOException {
    Ended ended = read();
    if (ended.failure().isPresent()) {
      throw new IOException(ended.failure().get());
    }
    return ended.stored();
  }

  /**
   * What a writer came to.
   *
   * @param stored how many entries it reported
   * @param failure why the next one can't be stored, where it said so
   */
  record Ended(long stored, Optional<String> failure) {}

  /**
   * Waits until it has ended by itself.
   *
   * @throws IOException when it broke
   */
  Ended end() throws IOException, InterruptedException {
    Ended ended = read();
    if (process.waitFor() != 0) {
      throw new IOException("a writer ended with " + process.exitValue());
    }
    return ended;
  }

  private Ended read() {
    out.lines().forEach(said::add);
    return new Ended(
        said.stream().filter(WriterProcess.STORED::equals).count(),
        said.stream().filter(line -> line.startsWith(WriterProcess.FAILED)).findFirst());
  }
}
