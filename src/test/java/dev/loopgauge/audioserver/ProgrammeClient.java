package dev.loopgauge.audioserver;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** A client of the audio server, in a process of its own, that plays speech and music. */
public final class ProgrammeClient implements AutoCloseable {
  private final Process process;

  private ProgrammeClient(Process process) {
    this.process = process;
  }

  /** Starts it, and waits until it plays to some input ports of others. */
  public static ProgrammeClient start(AudioServer server, long seed, List<String> inputs)
      throws IOException {
    List<String> command = new ArrayList<>();
    command.add(System.getProperty("java.home") + File.separator + "bin" + File.separator + "java");
    command.addAll(List.of("-XX:+UseSerialGC", "-Xmx160m", "-XX:TieredStopAtLevel=1"));
    command.addAll(List.of("-cp", System.getProperty("java.class.path")));
    command.addAll(List.of(ProgrammeProcess.class.getName(), "programme", "" + seed));
    command.addAll(inputs);
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.environment().putAll(server.environment());
    builder.redirectError(ProcessBuilder.Redirect.INHERIT);
    ProgrammeClient client = new ProgrammeClient(builder.start());
    BufferedReader answers = client.process.inputReader();
    String line = answers.readLine();
    if (!ProgrammeProcess.READY.equals(line)) {
      client.close();
      throw new IOException(
          "the programme said '" + line + "', not '" + ProgrammeProcess.READY + "'");
    }
    return client;
  }

  @Override
  public void close() {
    process.destroyForcibly();
    try {
      process.waitFor();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
