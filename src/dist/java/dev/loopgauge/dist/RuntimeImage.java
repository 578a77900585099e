package dev.loopgauge.dist;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** The part of the JDK that the jar needs. */
final class RuntimeImage {
  /**
   * What is looked for by name while the program runs, so that no class names it: elliptic curves
   * for a journal's database over TLS, and the code pages of Windows consoles. {@code RuntimeIT}
   * asks the runtime for each.
   */
  private static final List<String> SERVICES = List.of("jdk.crypto.ec", "jdk.charsets");

  /** Windows of the desktop, which the program never opens; they would need X11's libraries. */
  private static final String WINDOWS =
      "**libawt_xawt.so,**libjawt.so,**libsplashscreen.so,**/src.zip";

  private RuntimeImage() {}

  /** The modules that the classes of the jar name, with those that serve them. */
  static Set<String> modules(Path jar) {
    List<String> arguments = new ArrayList<>(List.of("--multi-release", "17"));
    arguments.addAll(List.of("--ignore-missing-deps", "--print-module-deps", jar.toString()));
    String named = Tools.jdk("jdeps", arguments).strip();
    Set<String> modules = new TreeSet<>(List.of(named.split(",", -1)));
    modules.addAll(SERVICES);
    return modules;
  }

  /** Links these modules into a new folder. */
  static void link(Set<String> modules, Path folder) {
    List<String> arguments = new ArrayList<>();
    arguments.addAll(List.of("--add-modules", String.join(",", modules)));
    arguments.addAll(List.of("--output", folder.toString()));
    arguments.addAll(List.of("--strip-java-debug-attributes", "--no-header-files"));
    arguments.addAll(List.of("--no-man-pages", "--exclude-files=" + WINDOWS));
    Tools.jdk("jlink", arguments);
  }
}
