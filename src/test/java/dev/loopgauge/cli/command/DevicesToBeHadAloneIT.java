package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Jar;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.outside.FakeSoundCard;
import dev.loopgauge.outside.NeedsTool;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The packaged program lists a card that another program may hold. */
@NeedsTool("gcc")
@Timeout(120)
class DevicesToBeHadAloneIT {
  @TempDir Path folder;

  @Test
  void areListedWithoutBeingOpenedUntilAProbeIsAskedFor() throws Exception {
    FakeSoundCard card = FakeSoundCard.in(folder);
    Run listed = run(card, "devices");
    assertEquals(ExitCode.GOOD, listed.exitCode(), listed.err());
    assertTrue(
        listed.out().matches("(?s).*  Stage \\[plughw:0,0] +\\? +\\? +\\?\n.*"), listed.out());
    for (String alone : List.of("alone", "half", "itself")) {
      String row = "(?s).*  ALSA: " + alone + " +\\? +\\? +\\?\n.*";
      assertTrue(listed.out().matches(row), listed.out());
    }
    assertTrue(listed.out().contains("?: channels not counted: --probe opens it\n"), listed.out());
    // Java Sound looks for a default device by opening it.
    assertEquals(List.of("default", "gone", "mixed", "nowhere", "old", "shared"), card.opened());

    Run probed = run(card, "devices", "--probe");
    assertTrue(probed.out().matches("(?s).*  ALSA: alone +\\d+ +\\d+ .*"), probed.out());
    assertTrue(card.opened().containsAll(List.of("alone", "hw:0,0")), card.opened()::toString);
  }

  private Run run(FakeSoundCard card, String... args) throws Exception {
    Path err = folder.resolve("err");
    return Jar.end(Jar.start(folder, card.environment(), err, args), err);
  }
}
