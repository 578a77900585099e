package dev.loopgauge.capture.javasound;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;

/** A running {@link TakesProcess}. */
final class Takes implements AutoCloseable {
  private final Process process;
  private final BufferedReader lines;

  private Takes(Process process) {
    this.process = process;
    this.lines = process.inputReader();
  }

  /** Starts takes on ALSA's default device of that configuration. */
  static Takes start(Map<String, String> environment, Path alsaConfig, int... arguments)
      throws IOException {
    List<String> command = new ArrayList<>();
    command.add(System.getProperty("java.home") + File.separator + "bin" + File.separator + "java");
    command.addAll(List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1"));
    command.addAll(List.of("-cp", System.getProperty("java.class.path")));
    command.add(TakesProcess.class.getName());
    IntStream.of(arguments).mapToObj(String::valueOf).forEach(command::add);
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.environment().putAll(environment);
    builder.environment().put("ALSA_CONFIG_PATH", alsaConfig.toString());
    builder.redirectError(ProcessBuilder.Redirect.DISCARD);
    return new Takes(builder.start());
  }

  /** The next line it says. */
  String next() throws IOException {
    String line = lines.readLine();
    if (line == null) {
      throw new IOException("the takes ended early");
    }
    return line;
  }

  /** All lines until it ends. */
  List<String> rest() {
    return lines.lines().toList();
  }

  /** Lets it close its lines, then ends it. */
  @Override
  public void close() {
    try {
      process.waitFor(3, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    process.destroyForcibly();
  }
}
