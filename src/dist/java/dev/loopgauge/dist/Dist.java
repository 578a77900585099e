package dev.loopgauge.dist;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Makes the program to install for the platform that it runs on. */
public final class Dist {
  private static final String NAME = "loopgauge";
  private static final List<String> ABOUT =
      List.of(
          "--name", NAME,
          "--vendor", "Loopgauge",
          "--description", "Measures the real delay of an audio path");

  /** For the plots of the report; Java looks for them while it runs, so jpackage can't see it. */
  private static final String FONTS = "libfontconfig1, fonts-dejavu-core";

  private final Path sources;
  private final String maintainer;
  private final Path jar;
  private final String version;
  private final Instant time;
  private final Path out;

  private Dist(Path sources, Path jar, String version, Instant time, Path out, String maintainer) {
    this.sources = sources;
    this.maintainer = maintainer;
    this.jar = jar;
    this.version = version;
    this.time = time;
    this.out = out;
  }

  /**
   * Arguments: the folder {@code src/dist}, the jar, its version and time, where to write, and who
   * maintains the package, an address.
   */
  public static void main(String[] args) throws IOException, InterruptedException {
    Path out = Path.of(args[4]);
    clear(out);
    Instant time = Instant.parse(args[3]);
    new Dist(Path.of(args[0]), Path.of(args[1]), args[2], time, out, args[5]).make();
  }

  private void make() throws IOException, InterruptedException {
    Path runtime = out.resolve("runtime");
    RuntimeImage.link(RuntimeImage.modules(jar), runtime);
    Path java = runtime.resolve("bin/java");
    PlainZip.make(sources, jar, version, time, java, out);
    Path input = Files.createDirectory(out.resolve("input"));
    Files.copy(jar, input.resolve("loopgauge.jar"));
    Files.copy(out.resolve("loopgauge.classlist"), input.resolve("loopgauge.classlist"));
    Path inside = jar.resolveSibling("classes/META-INF");
    for (String text : List.of("LICENSE", "THIRD-PARTY.txt")) {
      Files.copy(inside.resolve(text), input.resolve(text));
    }
    ImageSbom.write(
        inside.resolve("sbom/loopgauge.cdx.json"), runtime, input.resolve("loopgauge.cdx.json"));
    image(runtime, input);
    if (isLinux()) {
      launchers(out.resolve(NAME + "/bin"));
      if (Files.isExecutable(Path.of("/usr/bin/dpkg-deb"))) {
        deb();
      }
    }
  }

  private void image(Path runtime, Path input) {
    List<String> arguments = new ArrayList<>(ABOUT);
    arguments.addAll(List.of("--type", "app-image", "--app-version", version));
    arguments.addAll(List.of("--runtime-image", runtime.toString()));
    arguments.addAll(List.of("--input", input.toString(), "--main-jar", "loopgauge.jar"));
    arguments.addAll(List.of("--dest", out.toString()));
    if (System.getProperty("os.name").startsWith("Windows")) {
      arguments.add("--win-console");
    }
    Tools.jdk("jpackage", arguments);
  }

  /** The scripts choose the virtual machine's flags by command, which jpackage's own can't. */
  private void launchers(Path bin) throws IOException {
    for (String script : List.of("loopgauge", "loopgauge-archive")) {
      Files.copy(
          sources.resolve("launcher").resolve(script),
          bin.resolve(script),
          StandardCopyOption.REPLACE_EXISTING,
          StandardCopyOption.COPY_ATTRIBUTES);
    }
  }

  private void deb() {
    List<String> arguments = new ArrayList<>(ABOUT);
    arguments.addAll(List.of("--type", "deb", "--app-version", version));
    arguments.addAll(List.of("--app-image", out.resolve(NAME).toString()));
    arguments.addAll(List.of("--resource-dir", sources.resolve("debian").toString()));
    arguments.addAll(List.of("--license-file", out.resolve("input/LICENSE").toString()));
    arguments.addAll(List.of("--linux-deb-maintainer", maintainer));
    arguments.addAll(List.of("--linux-app-category", "sound"));
    arguments.addAll(List.of("--linux-package-deps", FONTS));
    arguments.addAll(List.of("--dest", out.toString()));
    Tools.jdk("jpackage", arguments);
  }

  private static boolean isLinux() {
    return System.getProperty("os.name").toLowerCase(Locale.ROOT).equals("linux");
  }

  private static void clear(Path folder) throws IOException {
    if (Files.exists(folder)) {
      try (Stream<Path> all = Files.walk(folder)) {
        for (Path each : all.sorted((a, b) -> b.compareTo(a)).toList()) {
          Files.delete(each);
        }
      }
    }
    Files.createDirectories(folder);
  }
}
