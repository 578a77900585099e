package dev.loopgauge.cli.command;

import dev.loopgauge.audioserver.AudioServer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * What a process takes of a Linux machine, and of its audio server.
 *
 * @param memoryKb what it holds in memory, in KiB (VmRSS of proc(5))
 * @param threads its threads
 * @param handles its open files, pipes and sockets
 * @param ports the server's ports, those of all its clients
 */
record Footprint(long memoryKb, int threads, int handles, int ports) {
  /** The footprint just now. */
  static Footprint of(Process process, AudioServer server)
      throws IOException, InterruptedException {
    Path folder = Path.of("/proc", String.valueOf(process.pid()));
    List<String> status = Files.readAllLines(folder.resolve("status"));
    int handles;
    try (Stream<Path> open = Files.list(folder.resolve("fd"))) {
      handles = (int) open.count();
    }
    return new Footprint(
        number(status, "VmRSS:"), (int) number(status, "Threads:"), handles, server.ports());
  }

  private static long number(List<String> status, String key) {
    String line = status.stream().filter(each -> each.startsWith(key)).findFirst().orElseThrow();
    return Long.parseLong(line.replaceAll("[^0-9]", ""));
  }
}
