package dev.loopgauge.outside;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;

/**
 * A disk that fails now and then, or is slow, as only processes with its environment see it: a
 * library that stands before their calls to wait for the disk. Needs {@code gcc}, and Linux.
 *
 * @param environment what such a process must have in its environment
 */
public record FaultyDisk(Map<String, String> environment) {
  private static final String LIBRARY = "faulty-disk";

  /** One wait in this many fails, by chance. */
  public static FaultyDisk failingOnceIn(int calls, Path folder)
      throws IOException, InterruptedException {
    return new FaultyDisk(
        Map.of(
            "LD_PRELOAD",
            PreloadedLibrary.built(LIBRARY, folder).toString(),
            "FAULTY_DISK_FAILS",
            "" + calls));
  }

  /** Each wait takes so long. */
  public static FaultyDisk slow(int ms, Path folder) throws IOException, InterruptedException {
    return new FaultyDisk(
        Map.of(
            "LD_PRELOAD",
            PreloadedLibrary.built(LIBRARY, folder).toString(),
            "FAULTY_DISK_SLOW_MS",
            "" + ms));
  }
}
