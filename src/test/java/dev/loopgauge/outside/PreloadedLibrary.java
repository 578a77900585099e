package dev.loopgauge.outside;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** Libraries in C that stand before a process's calls to others. */
final class PreloadedLibrary {
  private PreloadedLibrary() {}

  /** Compiles one of them into a folder, whoever may run processes with it. */
  static Path built(String name, Path folder) throws IOException, InterruptedException {
    Path source = folder.resolve(name + ".c");
    try (InputStream in = PreloadedLibrary.class.getResourceAsStream(name + ".c")) {
      Files.write(source, in.readAllBytes());
    }
    Path library = folder.resolve(name + ".so");
    int code =
        new ProcessBuilder(
                "gcc", "-shared", "-fPIC", "-O1", "-o", library + "", source + "", "-ldl")
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
