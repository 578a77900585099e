package dev.loopgauge.outside;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** Runs a program that others made. */
public final class Tool {
  private static final int LIMIT_SECONDS = 60;

  private Tool() {}

  /**
   * Runs a program to its end and gives back its standard output.
   *
   * @param command the program and its arguments
   * @throws AssertionError when it fails, or takes longer than a minute; with what it said
   */
  public static byte[] run(String... command) throws IOException, InterruptedException {
    Path out = Files.createTempFile("tool", ".out");
    Path err = Files.createTempFile("tool", ".err");
    try {
      Process process =
          new ProcessBuilder(command)
              .redirectInput(ProcessBuilder.Redirect.from(Path.of("/dev/null").toFile()))
              .redirectOutput(out.toFile())
              .redirectError(err.toFile())
              .start();
      boolean ended = process.waitFor(LIMIT_SECONDS, TimeUnit.SECONDS);
      if (!ended) {
        process.destroyForcibly();
      }
      if (!ended || process.exitValue() != 0) {
        throw new AssertionError(
            List.of(command) + (ended ? " failed: " : " hung: ") + Files.readString(err));
      }
      return Files.readAllBytes(out);
    } finally {
      Files.delete(out);
      Files.delete(err);
    }
  }

  /**
   * Whether something is installed.
   *
   * @param name a program on the search path, or a file or folder by its full name
   */
  public static boolean isThere(String name, Map<String, String> environment) {
    if (Path.of(name).isAbsolute()) {
      return Files.exists(Path.of(name));
    }
    return Arrays.stream(environment.getOrDefault("PATH", "").split(File.pathSeparator, -1))
        .anyMatch(folder -> Files.isExecutable(Path.of(folder, name)));
  }
}
