package dev.loopgauge.dist;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/** The jar with a launcher for each system, for those who have a Java. */
public final class PlainZip {
  private PlainZip() {}

  /**
   * Makes it in a folder that must be there.
   *
   * @param sources the folder {@code src/dist}
   * @param jar the program; licence texts lie in {@code classes} beside it
   * @param java the virtual machine that says which classes commands load
   */
  public static Path make(
      Path sources, Path jar, String version, Instant time, Path java, Path folder)
      throws IOException, InterruptedException {
    Path list = folder.resolve("loopgauge.classlist");
    ClassList.write(java, jar, Files.createDirectory(folder.resolve("scratch")), list);
    String top = "loopgauge-" + version + "/";
    SortedMap<String, Path> content = new TreeMap<>();
    for (String script : List.of("loopgauge", "loopgauge-archive", "loopgauge.cmd")) {
      content.put(top + "bin/" + script, sources.resolve("launcher").resolve(script));
    }
    content.put(top + "lib/loopgauge.jar", jar);
    content.put(top + "lib/loopgauge.classlist", list);
    for (String text : List.of("LICENSE", "THIRD-PARTY.txt")) {
      content.put(top + text, jar.resolveSibling("classes/META-INF/" + text));
    }
    Path zip = folder.resolve("loopgauge-" + version + ".zip");
    ZipFolder.write(content, time, zip);
    return zip;
  }
}
