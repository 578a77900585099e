package dev.loopgauge.audioserver;

import com.sun.jna.ptr.IntByReference;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import org.jaudiolibs.jnajack.lowlevel.JackLibrary;
import org.jaudiolibs.jnajack.lowlevel.JackLibraryDirect;

/**
 * A running jackd without hardware: two physical sends that go nowhere and two physical returns
 * that are silent. Each one has a new name, since a killed server's name can't be used again.
 *
 * <p>From its start on, clients opened in this process find it; for a child process put {@link
 * #environment} into its environment.
 */
public final class AudioServer implements AutoCloseable {
  private static final String NAME_PREFIX = "loopgauge-test-";
  private static final long READY_SECONDS = 15;
  private static final long END_SECONDS = 5;
  private static final int NO_START_SERVER = 0x01;
  private static final Path SHARED_MEMORY = Path.of("/dev/shm");

  /** Whether late cycles stretch time, or lose it as a sound card would. */
  public enum Cycles {
    /** The server waits for its clients; every frame arrives, though not always in time. */
    STRETCH,
    /** The server goes on without a late client: real dropouts. */
    LOSE
  }

  private final String name;
  private final Process process;
  private final Path log;

  private AudioServer(String name, Process process, Path log) {
    this.name = name;
    this.process = process;
    this.log = log;
  }

  /** Starts a server and waits until clients can open. */
  public static AudioServer start(Cycles cycles, int rateHz, int blockSize) throws IOException {
    ServerRegistry.sweep(NAME_PREFIX);
    String name = NAME_PREFIX + UUID.randomUUID().toString().substring(0, 8);
    Path log = Files.createTempFile("jackd", ".log");
    ProcessBuilder builder = new ProcessBuilder(command(name, cycles, rateHz, blockSize));
    builder.environment().put("JACK_NO_AUDIO_RESERVATION", "1");
    builder.redirectErrorStream(true).redirectOutput(log.toFile());
    AudioServer server = new AudioServer(name, builder.start(), log);
    server.environment().forEach(NativeProcess::setEnvironment);
    server.awaitReady();
    return server;
  }

  private static List<String> command(String name, Cycles cycles, int rateHz, int blockSize) {
    List<String> command = new ArrayList<>(List.of("jackd", "--realtime", "-P70", "-n", name));
    if (cycles == Cycles.STRETCH) {
      command.add("-S");
    }
    command.addAll(List.of("-d", "dummy", "-r", "" + rateHz, "-p", "" + blockSize));
    return command;
  }

  private void awaitReady() throws IOException {
    JackLibrary library = new JackLibraryDirect();
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(READY_SECONDS);
    while (process.isAlive() && System.nanoTime() - deadline < 0) {
      if (Files.exists(SHARED_MEMORY.resolve("jack_" + name + "_" + userId() + "_0"))) {
        var client = library.jack_client_open("ready", NO_START_SERVER, new IntByReference());
        if (client != null) {
          library.jack_client_close(client);
          return;
        }
      }
      sleep(20);
    }
    process.destroyForcibly();
    throw new IOException("jackd did not start: " + Files.readString(log));
  }

  private static Object userId() throws IOException {
    return Files.getAttribute(Path.of("/proc/self"), "unix:uid");
  }

  /** What a child process must have in its environment to find this server. */
  public Map<String, String> environment() {
    return Map.of("JACK_DEFAULT_SERVER", name, "JACK_NO_START_SERVER", "1");
  }

  /** Patches a port that gives sound to one that takes it. */
  public void patch(String from, String to) throws IOException, InterruptedException {
    int code = cable("jack_connect", from, to).inheritIO().start().waitFor();
    if (code != 0) {
      throw new IOException("jack_connect " + from + " " + to + " ended with " + code);
    }
  }

  /** Takes a patch away, if it is there. */
  public void unpatch(String from, String to) throws IOException, InterruptedException {
    cable("jack_disconnect", from, to).redirectErrorStream(true).start().waitFor();
  }

  /** How many ports there are, those of all clients. */
  public int ports() throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder("jack_lsp");
    builder.environment().putAll(environment());
    Process process = builder.redirectError(ProcessBuilder.Redirect.DISCARD).start();
    int ports = (int) process.inputReader().lines().count();
    int code = process.waitFor();
    if (code != 0) {
      throw new IOException("jack_lsp ended with " + code);
    }
    return ports;
  }

  private ProcessBuilder cable(String command, String from, String to) {
    ProcessBuilder builder = new ProcessBuilder(command, from, to);
    builder.environment().putAll(environment());
    return builder;
  }

  /** Ends the server at once, as a crash would. */
  public void kill() {
    process.destroyForcibly();
    tidy();
  }

  /** Stops the server where it stands; its clients hear nothing from it. */
  public void pause() {
    NativeProcess.pause(process);
  }

  /** Lets a paused server go on. */
  public void resume() {
    NativeProcess.resume(process);
  }

  @Override
  public void close() {
    process.destroy();
    if (!ends()) {
      kill();
    }
    tidy();
  }

  private boolean ends() {
    try {
      return process.waitFor(END_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  private void tidy() {
    try {
      if (!ends()) {
        process.destroyForcibly();
      }
      sweep();
      Files.deleteIfExists(log);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Removes what a killed server leaves in shared memory. */
  private void sweep() throws IOException {
    try (DirectoryStream<Path> left =
        Files.newDirectoryStream(SHARED_MEMORY, "jack_*" + name + "_*")) {
      for (Path file : left) {
        Files.deleteIfExists(file);
      }
    }
  }

  private static void sleep(long ms) {
    try {
      Thread.sleep(ms);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }
}
