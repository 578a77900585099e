package dev.loopgauge.dist;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** The classes that common commands load, for an archive of them. */
final class ClassList {
  private static final String CHAIN = "demo/lantern-theatre.yaml";
  private static final String LATE = "demo/block-128.wav";

  /** The first makes the files of the others. */
  private static final List<List<String>> COMMANDS =
      List.of(
          List.of("demo", "--folder", "demo"),
          List.of("--version"),
          List.of("help"),
          List.of("check", CHAIN),
          List.of("budget", CHAIN),
          List.of("analyze", "--reference", LATE),
          List.of("analyze", "--reference", LATE, "--chain", CHAIN, "--path", "vocal-house"));

  private ClassList() {}

  /**
   * Runs common commands and writes what they loaded, sorted, since threads load in any order.
   *
   * @param java the virtual machine to ask
   * @param folder an empty folder for their files
   */
  static void write(Path java, Path jar, Path folder, Path list)
      throws IOException, InterruptedException {
    Set<String> lines = new TreeSet<>();
    Path loaded = folder.resolve("loaded");
    for (List<String> arguments : COMMANDS) {
      List<String> command = new ArrayList<>();
      command.addAll(List.of(java.toString(), "-Xshare:off", "-XX:TieredStopAtLevel=1"));
      command.addAll(List.of("-XX:+UseSerialGC", "-XX:DumpLoadedClassList=" + loaded));
      command.addAll(List.of("-cp", jar.toString(), "dev.loopgauge.cli.Main"));
      command.addAll(arguments);
      Tools.run(folder, 1, command);
      Files.readAllLines(loaded).stream().filter(ClassList::isKept).forEach(lines::add);
    }
    Files.write(list, lines);
  }

  /** Not remarks, nor proxies, which are made anew at each start. */
  private static boolean isKept(String line) {
    return !line.startsWith("#") && !line.contains("$Proxy");
  }
}
