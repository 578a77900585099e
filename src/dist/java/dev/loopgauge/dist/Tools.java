package dev.loopgauge.dist;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.spi.ToolProvider;

/** Runs tools of the JDK and other programs; what fails ends the build with what it said. */
final class Tools {
  private Tools() {}

  /** Runs one of the JDK's own tools and gives back what it printed. */
  static String jdk(String tool, List<String> arguments) {
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    PrintStream out = new PrintStream(said, true, StandardCharsets.UTF_8);
    int code =
        ToolProvider.findFirst(tool)
            .orElseThrow(() -> new IllegalStateException("this JDK has no " + tool))
            .run(out, out, arguments.toArray(String[]::new));
    String text = said.toString(StandardCharsets.UTF_8);
    if (code != 0) {
      throw new IllegalStateException(tool + " " + arguments + " ended with " + code + ": " + text);
    }
    return text;
  }

  /** Runs a program in a folder; codes up to {@code worst} are expected. */
  static void run(Path folder, int worst, List<String> command)
      throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(new ArrayList<>(command))
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .start();
    process.getOutputStream().close();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    int code = process.waitFor();
    if (code > worst) {
      throw new IllegalStateException(command + " ended with " + code + ": " + said);
    }
  }
}
