package dev.loopgauge.screen;

import dev.loopgauge.job.Person;
import java.io.IOException;
import java.util.List;
import java.util.Locale;

/** Asks the operating system to show an address in the browser. */
final class OpenBrowser {
  private OpenBrowser() {}

  /** Does it; the person hears where that isn't possible. */
  static void at(String address, Person person) {
    try {
      new ProcessBuilder(command(System.getProperty("os.name").toLowerCase(Locale.ROOT), address))
          .redirectOutput(ProcessBuilder.Redirect.DISCARD)
          .redirectError(ProcessBuilder.Redirect.DISCARD)
          .start();
    } catch (IOException e) {
      person.say("The browser can't be opened from here: open the address by hand.");
    }
  }

  static List<String> command(String system, String address) {
    if (system.startsWith("windows")) {
      return List.of("rundll32", "url.dll,FileProtocolHandler", address);
    }
    return List.of(system.startsWith("mac") ? "open" : "xdg-open", address);
  }
}
