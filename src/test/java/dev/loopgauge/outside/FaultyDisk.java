package dev.loopgauge.outside;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/**
 * A disk that fails now and then, or is slow, as only processes with its environment see it: a
 * library that stands before their calls to wait for the disk. Needs {@code gcc}, and Linux.
 *
 * @param environment what such a process must have in its environment
 */
public record FaultyDisk(Map<String, String> environment) {
  private static final String SOURCE = "faulty-disk.c";

  /** One wait in so many fails, by chance. */
  public static FaultyDisk failingOnceIn(int calls, Path folder)
      throws IOException, InterruptedException {
    return new FaultyDisk(
        Map.of("LD_PRELOAD", library(folder).toString(), "FAULTY_DISK_FAILS", "" + calls));
  }

  /** Each wait takes so long. */
  public static FaultyDisk slow(int ms, Path folder) throws IOException, InterruptedException {
    return new FaultyDisk(
        Map.of("LD_PRELOAD", library(folder).toString(), "FAULTY_DISK_SLOW_MS", "" + ms));
  }

  private static Path library(Path folder) throws IOException, InterruptedException {
    Path source = folder.resolve(SOURCE);
    try (InputStream in = FaultyDisk.class.getResourceAsStream(SOURCE)) {
      Files.write(source, in.readAllBytes());
    }
    Path library = folder.resolve("faulty-disk.so");
    int code =
        new ProcessBuilder("gcc", "-shared", "-fPIC", "-O1", "-o", library + "", source + "")
            .inheritIO()
            .start()
            .waitFor();
    // A server runs as another user.
    boolean readable = folder.toFile().setExecutable(true, false);
    if (code != 0 || !readable) {
      throw new IOException("gcc ended with " + code);
    }
    return library;
  }
}
