package dev.loopgauge.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * The packaged program in a process of its own, without a terminal: the jar, or the program that is
 * installed where {@value #INSTALLED} names it.
 */
public final class Jar {
  static final String INSTALLED = "loopgauge.program";

  /** What the installed program's launcher gives short commands: most here last a few seconds. */
  private static final List<String> QUICK = List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC");

  private Jar() {}

  /** What starts the program. */
  static List<String> program() {
    String installed = System.getProperty(INSTALLED);
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    if (installed != null) {
      return List.of(installed);
    }
    List<String> program = new ArrayList<>(List.of(java));
    program.addAll(QUICK);
    program.addAll(List.of("-jar", System.getProperty("loopgauge.jar")));
    return program;
  }

  /** Starts a command here; what it says on standard error goes into that file. */
  public static Process start(Map<String, String> environment, Path err, String... args)
      throws IOException {
    return start(Path.of(""), environment, err, args);
  }

  /** Starts a command in a folder; what it says on standard error goes into that file. */
  public static Process start(
      Path folder, Map<String, String> environment, Path err, String... args) throws IOException {
    ProcessBuilder builder = prepared(folder, err, args);
    builder.environment().putAll(environment);
    return builder.start();
  }

  /** A command that has not started, for those who do more with it. */
  public static ProcessBuilder prepared(Path folder, Path err, String... args) {
    List<String> command = new ArrayList<>(program());
    command.addAll(List.of(args));
    return new ProcessBuilder(command)
        .directory(folder.toAbsolutePath().toFile())
        .redirectError(err.toFile());
  }

  /** Waits for a command to end. */
  public static Run end(Process process, Path err) throws IOException, InterruptedException {
    process.getOutputStream().close();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Run(process.waitFor(), out, Files.readString(err));
  }
}
