package dev.loopgauge.audioserver;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;

/**
 * A rig of known delay: a client of the audio server, in a process of its own, whose inputs {@code
 * in_1}, {@code in_2}, ... come out of {@code out_1}, {@code out_2}, ... later.
 */
public final class DelayClient implements AutoCloseable {
  private final Process process;
  private final BufferedReader answers;
  private final Writer requests;

  private DelayClient(Process process) {
    this.process = process;
    this.answers = process.inputReader();
    this.requests = process.outputWriter();
  }

  /** Starts a client of that name with these lines, and waits until it runs. */
  public static DelayClient start(AudioServer server, String name, DelayLine... lines)
      throws IOException {
    List<String> command = new ArrayList<>();
    command.add(System.getProperty("java.home") + File.separator + "bin" + File.separator + "java");
    // A short pause to collect rubbish, and no time lost on compiling for speed.
    command.addAll(List.of("-XX:+UseSerialGC", "-Xmn4m", "-Xmx32m", "-XX:TieredStopAtLevel=1"));
    command.addAll(List.of("-cp", System.getProperty("java.class.path")));
    command.add(DelayProcess.class.getName());
    command.add(name);
    for (DelayLine line : lines) {
      command.add(line.toArgument());
    }
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.environment().putAll(server.environment());
    builder.redirectError(ProcessBuilder.Redirect.INHERIT);
    DelayClient client = new DelayClient(builder.start());
    client.await(DelayProcess.READY);
    return client;
  }

  /** Makes the server change its block size, as any client may. */
  public void changeBlockSize(int samples) throws IOException {
    requests.write(DelayProcess.BLOCK_SIZE + " " + samples + "\n");
    requests.flush();
    await(DelayProcess.DONE);
  }

  /** Makes a line, counted from 1, another delay while it runs. */
  public void changeDelay(int line, int samples) throws IOException {
    requests.write(DelayProcess.DELAY + " " + line + " " + samples + "\n");
    requests.flush();
    await(DelayProcess.DONE);
  }

  /** Stops the client where it stands. */
  public void pause() {
    NativeProcess.pause(process);
  }

  /** Lets a paused client go on. */
  public void resume() {
    NativeProcess.resume(process);
  }

  /** Ends the client at once, as a crash would. */
  public void kill() throws InterruptedException {
    process.destroyForcibly().waitFor();
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

  private void await(String expected) throws IOException {
    String line = answers.readLine();
    if (!expected.equals(line)) {
      close();
      throw new IOException("the delay client said '" + line + "', not '" + expected + "'");
    }
  }
}
