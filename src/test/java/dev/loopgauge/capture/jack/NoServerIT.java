package dev.loopgauge.capture.jack;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.audioserver.NeedsAudioServer;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Each in a process of its own: a loaded library stays loaded, and it prints past Java. */
@NeedsAudioServer
@Timeout(30)
class NoServerIT {
  @Test
  void saysWhichServerIsMissingAndNothingElse() throws IOException {
    String printed = look();
    assertEquals(
        "No JACK server named 'nobody' (JACK_DEFAULT_SERVER) is running. Start the audio server"
            + " with the sound card, rate and block size of the show, and try again.\n",
        printed);
  }

  @Test
  void saysWhatToInstallWhenNativeCodeCannotBeLoaded() throws IOException {
    String printed = look("-Djna.nosys=true", "-Djna.nounpack=true");
    assertTrue(printed.startsWith("The JACK library is not installed"), printed);
    assertTrue(printed.contains("apt-get install jackd2"), printed);
    assertEquals(1, printed.lines().count(), printed);
  }

  /** Everything that looking prints, on stdout and stderr. */
  private static String look(String... options) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of(options));
    command.addAll(List.of("-cp", System.getProperty("java.class.path")));
    command.add(LookProcess.class.getName());
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().put("JACK_DEFAULT_SERVER", "nobody");
    Process process = builder.start();
    try (var reader = process.inputReader()) {
      return String.join("", reader.lines().map(line -> line + "\n").toList());
    }
  }
}
