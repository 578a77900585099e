package dev.loopgauge.audioserver;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A client of the audio server, in a process of its own, that plays programme over and over. */
public final class ProgrammeClient implements AutoCloseable {
  private final Process process;

  private ProgrammeClient(Process process) {
    this.process = process;
  }

  /** Plays synthetic speech and music, once it is patched to some input ports of others. */
  public static ProgrammeClient start(AudioServer server, long seed, List<String> inputs)
      throws IOException {
    return start(server, "" + seed, inputs);
  }

  /** Plays a recording: one channel of 16 bits, in WAV, at the server's rate. */
  public static ProgrammeClient start(AudioServer server, Path recording, List<String> inputs)
      throws IOException {
    return start(server, recording.toString(), inputs);
  }

  private static ProgrammeClient start(AudioServer server, String what, List<String> inputs)
      throws IOException {
    List<String> command = new ArrayList<>();
    command.add(System.getProperty("java.home") + File.separator + "bin" + File.separator + "java");
    command.addAll(List.of("-XX:+UseSerialGC", "-Xmx160m", "-XX:TieredStopAtLevel=1"));
    command.addAll(List.of("-cp", System.getProperty("java.class.path")));
    command.addAll(List.of(ProgrammeProcess.class.getName(), "programme", what));
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
