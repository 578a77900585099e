package dev.loopgauge.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.outside.NeedsTool;
import java.awt.image.BufferedImage;
import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The packaged screen, from its address to Ctrl-C. */
@Timeout(120)
class ScreenJarIT {
  @TempDir private Path folder;

  /** Nothing but these two lines is said on standard error: no library speaks for itself. */
  @Test
  void printsItsAddressServesItAndEndsWell() throws Exception {
    Process screen = begin(Map.of(), "--json");
    try (BufferedReader err = lines(screen)) {
      Asker own = new Asker(err.readLine().substring("Open ".length()));
      assertEquals("Ctrl-C ends it.", err.readLine());
      try (Following page = new Following(own)) {
        page.until("Nothing measured yet.");
        own.post("/do/measure", "{\"path\":\"vocal-house\"}");
        page.until("1 of 4 paths measured");
      }
      new ProcessBuilder("kill", "-INT", String.valueOf(screen.pid())).start().waitFor();
      String out = new String(screen.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      Run run = new Run(screen.waitFor(), out, String.join("\n", err.lines().toList()));
      assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
      assertEquals("", run.err());
      assertEquals("ended", run.json().get("outcome"));
      assertEquals(4, ((List<?>) run.json().get("paths")).size());
      assertTrue(out.contains("\"WITHIN\""), out);
    }
  }

  /** A stand-in for the desktop's program says what it was asked to open. */
  @Test
  void opensTheBrowserAtItsAddress() throws Exception {
    Path asked = folder.resolve("asked");
    assertEquals(0, new ProcessBuilder("mkfifo", asked.toString()).start().waitFor());
    Path standIn = folder.resolve("bin/xdg-open");
    Files.createDirectories(standIn.getParent());
    Files.writeString(standIn, "#!/bin/sh\necho \"$1\" > '" + asked + "'\n");
    assertTrue(standIn.toFile().setExecutable(true));
    Process screen = begin(Map.of("PATH", standIn.getParent() + ":/usr/bin:/bin"), "--open");
    try (BufferedReader err = lines(screen)) {
      String address = err.readLine().substring("Open ".length());
      assertEquals(address + "\n", Files.readString(asked));
      assertEquals(200, Asker.code(new Asker(address).get("/")));
    } finally {
      end(screen);
    }
  }

  @Test
  void saysSoWhereNoBrowserCanBeOpened() throws Exception {
    Process screen = begin(Map.of("PATH", folder.toString()), "--open");
    try (BufferedReader err = lines(screen)) {
      assertTrue(err.readLine().startsWith("Open http://127.0.0.1:"));
      assertEquals("Ctrl-C ends it.", err.readLine());
      assertEquals(
          "The browser can't be opened from here: open the address by hand.", err.readLine());
    } finally {
      end(screen);
    }
  }

  /** Reads the code as a phone does, from a terminal that is dark. */
  @Test
  @NeedsTool("zbarimg")
  void aReaderOfCodesFindsTheAddressForOthers() throws Exception {
    Process screen = begin(Map.of(), "--share");
    try (BufferedReader err = lines(screen)) {
      assertTrue(err.readLine().startsWith("Open http://127.0.0.1:"));
      List<String> code = new ArrayList<>();
      String line = err.readLine();
      assumeFalse(line.contains("is on no network"), line);
      while (!line.startsWith("Others: ")) {
        code.add(line);
        line = err.readLine();
      }
      Path picture = folder.resolve("code.png");
      assertTrue(ImageIO.write(picture(code), "png", picture.toFile()));
      Process reader = new ProcessBuilder("zbarimg", "-q", "--raw", picture.toString()).start();
      String read = new String(reader.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertEquals(line.substring("Others: ".length()), read.strip());
      assertEquals(200, Asker.code(new Asker(read.strip()).get("/")));
      while (!line.startsWith("Others on this network could read along")) {
        line = err.readLine();
      }
    } finally {
      end(screen);
    }
  }

  /** Each character is two modules, one above the other. */
  private static BufferedImage picture(List<String> code) {
    int size = 8;
    BufferedImage picture =
        new BufferedImage(
            size * code.get(0).length(), 2 * size * code.size(), BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < picture.getHeight(); y++) {
      for (int x = 0; x < picture.getWidth(); x++) {
        String line = code.get(y / (2 * size));
        char found = x / size < line.length() ? line.charAt(x / size) : ' ';
        boolean upper = y / size % 2 == 0;
        boolean bright = found == '\u2588' || found == (upper ? '\u2580' : '\u2584');
        picture.setRGB(x, y, bright ? 0xFFFFFF : 0);
      }
    }
    return picture;
  }

  private Process begin(Map<String, String> environment, String... more) throws Exception {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-jar",
                System.getProperty("loopgauge.jar"),
                "screen",
                Served.demoChain(folder).toString(),
                "--backend=simulated",
                "--port=0"));
    command.addAll(List.of(more));
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.environment().put("LOOPGAUGE_DATA", folder.resolve("data").toString());
    builder.environment().putAll(environment);
    return builder.start();
  }

  private static BufferedReader lines(Process screen) {
    return new BufferedReader(
        new InputStreamReader(screen.getErrorStream(), StandardCharsets.UTF_8));
  }

  private static void end(Process screen) throws Exception {
    screen.destroy();
    screen.waitFor();
  }
}
