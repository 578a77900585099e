package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ProfileCommandTest {
  private static final String[] FOH = {
    "profile", "save", "foh", "--backend", "jack", "--send", "2", "--return", "2"
  };

  @TempDir Path data;
  private LiveBench bench;

  @BeforeEach
  void open() {
    bench = new LiveBench(data);
  }

  @Test
  void keepsTheOptionsInAPlainFile() throws IOException {
    Run run = run(FOH, "--reference-send", "1", "--reference-return", "1", "--buffer", "256");

    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertEquals(
        """
        backend: jack
        send: 2
        return: 2
        reference-send: 1
        reference-return: 1
        buffer: 256
        stimulus: sweep
        seconds: 1.0
        level: -20.0
        repeat: 3
        max-delay: 0.2
        """,
        Files.readString(data.resolve("profiles/foh.yaml")));
  }

  @Test
  void renamesAndDeletes() {
    run(FOH);

    Run renamed = run(new String[] {"profile", "rename", "foh", "festival"});
    assertEquals(ExitCode.GOOD, renamed.exitCode(), renamed.err());
    assertEquals("festival\n", run(new String[] {"profile", "list"}).out());
    run(FOH);
    Run taken = run(new String[] {"profile", "rename", "foh", "festival"});
    assertEquals(ExitCode.USAGE, taken.exitCode(), taken.out());
    Run deleted = run(new String[] {"profile", "delete", "festival", "--json"});
    assertEquals(List.of("foh"), deleted.json().get("profiles"));
    assertEquals("profile delete", deleted.json().get("command"));
    Run again = run(new String[] {"profile", "delete", "festival"});
    assertEquals(ExitCode.USAGE, again.exitCode());
    assertTrue(again.err().contains("there are: foh"), again.err());
  }

  @Test
  void noDocumentNamesTheFolder() {
    Run saved = run(FOH, "--json");

    assertEquals("foh.yaml", saved.json().get("file"));
    assertEquals("profiles", run(new String[] {"profile", "list", "--json"}).json().get("folder"));
  }

  @Test
  void showsAndListsWhatWasKept() {
    run(FOH);

    assertEquals("foh\n", run(new String[] {"profile", "list"}).out());
    Run shown = run(new String[] {"profile", "show", "foh"});
    assertTrue(shown.out().contains("sweep of 1 s at -20 dBFS, repeat 3"), shown.out());
    Run json = run(new String[] {"profile", "show", "foh", "--json"});
    Map<?, ?> profile = (Map<?, ?>) json.json().get("profile");
    assertEquals("jack", profile.get("backend"));
    assertEquals(-20, ((Number) profile.get("levelDbfs")).intValue());
    assertNull(profile.get("bufferSamples"));
    assertEquals("profile show", json.json().get("command"));
  }

  @Test
  void withoutProfilesItSaysHowToKeepOne() {
    Run run = run(new String[] {"profile", "list"});

    assertEquals(ExitCode.GOOD, run.exitCode());
    assertTrue(run.out().startsWith("No profiles in " + data), run.out());
  }

  @Test
  void overwritesNothingUnlessToldTo() {
    run(FOH);
    Run again = run(FOH, "--level", "-30");

    assertEquals(ExitCode.USAGE, again.exitCode());
    assertTrue(again.err().startsWith("there is a profile 'foh' already"), again.err());
    assertEquals(ExitCode.GOOD, run(FOH, "--level", "-30", "--replace").exitCode());
    assertTrue(run(new String[] {"profile", "show", "foh"}).out().contains("-30 dBFS"));
  }

  @Test
  void oneProfileCanBuildOnAnother() {
    run(FOH, "--level", "-30");
    run(new String[] {"profile", "save", "wedges", "--profile", "foh", "--send", "4"});

    String shown = run(new String[] {"profile", "show", "wedges"}).out();
    assertTrue(shown.contains("send 4 to return 2"), shown);
    assertTrue(shown.contains("-30 dBFS"), shown);
  }

  @Test
  void anUnknownProfileNamesTheOthers() {
    run(FOH);
    Run run = run(new String[] {"profile", "show", "foo", "--json"});

    assertEquals(ExitCode.USAGE, run.exitCode());
    assertEquals("unusable-setup", run.error("code"));
    assertEquals("there are: foh", run.error("hint"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "--backend jackk --send 2 --return 2",
        "--send 2 --return 2",
        "--backend jack --send 2",
        "--backend jack --send 0 --return 2",
        "--backend jack --send 2 --return 2 --reference-send 1",
        "--backend jack --send 2 --return 2 --reference-send 1 --reference-return 2",
        "--backend jack --send 2 --return 2 --level -3",
        "--backend jack --send 2 --return 2 --level 1 --loud",
        "--backend jack --send 2 --return 2 --repeat 101",
        "--backend jack --send 2 --return 2 --max-delay 11",
        "--backend jack --send 2 --return 2 --seconds 100",
        "--backend jack --send 2 --return 2 --stimulus hum",
      })
  void refusesWhatCouldNotBeMeasured(String options) {
    Run run = run(new String[] {"profile", "save", "foh"}, options.split(" "));

    assertEquals(ExitCode.USAGE, run.exitCode());
    assertEquals(2, run.err().lines().count(), run.err());
    assertEquals(0, data.toFile().list().length);
  }

  private Run run(String[] args, String... more) {
    return bench.run(List.of(), Stream.of(args, more).flatMap(Stream::of).toArray(String[]::new));
  }
}
