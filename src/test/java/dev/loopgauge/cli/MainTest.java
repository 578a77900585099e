package dev.loopgauge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.cli.wiring.Adapters;
import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

class MainTest {
  @TempDir private Path folder;

  @Test
  void helpGoesToStandardOutputAndIsGood() {
    Run run = Run.of("--help");
    assertEquals(ExitCode.GOOD, run.exitCode());
    assertTrue(run.out().startsWith("Usage: loopgauge"), run.out());
    assertEquals("", run.err());
  }

  /** Every help screen there is, with those of commands within commands. */
  private static List<List<String>> helps() {
    List<List<String>> helps = new ArrayList<>(List.of(List.of("--help")));
    CommandLine all = Commands.lineFor(List.of(), Console.ofProcess(), Adapters::ofThisComputer);
    all.getSubcommands()
        .forEach(
            (name, line) -> {
              helps.add(List.of(name, "--help"));
              line.getSubcommands()
                  .keySet()
                  .forEach(part -> helps.add(List.of(name, part, "--help")));
            });
    return helps;
  }

  @ParameterizedTest
  @ValueSource(ints = {60, 80, 132})
  void helpFitsTheTerminal(int columns) {
    for (List<String> args : helps()) {
      Run help =
          Run.on(
              false, "", Map.of("COLUMNS", String.valueOf(columns)), args.toArray(String[]::new));
      assertEquals(ExitCode.GOOD, help.exitCode(), help.err());
      assertTrue(
          help.out().lines().allMatch(line -> line.length() <= columns),
          () -> args + "\n" + help.out());
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {60, 80})
  void everyHelpShowsAnExampleAndNoListLongerThanAScreen(int columns) {
    Map<String, String> terminal = Map.of("COLUMNS", String.valueOf(columns));
    for (List<String> args : helps().subList(1, helps().size())) {
      String help = Run.on(false, "", terminal, args.toArray(String[]::new)).out();
      boolean hasCommands = help.contains("\nCommands:\n");
      assertTrue(hasCommands || help.contains("\nExample"), () -> args + "\n" + help);
      for (String group : help.split("\n\n", -1)) {
        assertTrue(group.lines().count() <= 40, () -> args + "\n" + group);
      }
    }
  }

  @Test
  void helpListsTheCommandsUnderTheirHeadings() {
    String help = Run.of("--help").out();
    int last = 0;
    for (String heading :
        List.of("Plan:", "Patch:", "Measure:", "Recordings:", "Record:", "Look:")) {
      int place = help.indexOf("\n" + heading + "\n");
      assertTrue(place > last, heading + "\n" + help);
      last = place;
    }
    Commands.names()
        .forEach(name -> assertTrue(help.contains("\n  " + name + " "), name + "\n" + help));
  }

  @Test
  void helpOfACommandIsItsHelpOption() {
    assertEquals(Run.of("measure", "--help").out(), Run.of("help", "measure").out());
    assertEquals(Run.of("--help").out(), Run.of("help").out());
    assertEquals(ExitCode.USAGE, Run.of("help", "meassure").exitCode());
  }

  @Test
  void helpAndVersionAreDocumentsToo() {
    Run help = Run.of("measure", "--json", "--help");
    Run version = Run.of("--json", "--version");

    assertEquals("measure", help.json().get("command"));
    assertTrue(help.json().get("text").toString().contains("--send"), help.out());
    assertEquals("version", version.json().get("outcome"));
  }

  @Test
  void versionIsOneLine() {
    Run run = Run.of("--version");
    assertEquals(ExitCode.GOOD, run.exitCode());
    assertEquals(1, run.out().lines().count());
  }

  @Test
  void withoutACommandItSaysWhereTheHelpIs() {
    Run run = Run.of();
    assertEquals(ExitCode.USAGE, run.exitCode());
    assertEquals("", run.out());
    assertEquals(
        "which command? none was given\n  try  `loopgauge --help` shows what it takes\n",
        run.err());
  }

  @Test
  void anUnknownCommandIsNamedWithTheNearest() {
    Run run = Run.of("analyse", "--json");
    assertEquals(ExitCode.USAGE, run.exitCode());
    assertEquals("unknown command 'analyse'", run.error("text"));
    assertEquals("did you mean analyze?", run.error("hint"));
  }

  @Test
  void anUnknownOptionIsNamedWithTheNearest() {
    Run run = Run.of("--versoin");
    assertEquals(ExitCode.USAGE, run.exitCode());
    assertEquals("unknown option '--versoin'\n  try  did you mean --version?\n", run.err());
  }

  @ParameterizedTest
  @CsvSource({"analyze, ''", "follow, ' --window S'"})
  void aRecordingWithoutAnOptionIsAskedAbout(String command, String missing) {
    Run alone = Run.of(command, "sw.wav");
    assertEquals(ExitCode.USAGE, alone.exitCode());
    assertEquals(
        """
        What should I do with sw.wav?
          try  `--reference sw.wav --return OTHER.wav%s`, or run `loopgauge pairs sw.wav`
        """
            .formatted(missing),
        alone.err());
    assertEquals(
        """
        What should I do with my take.wav?
          try  `--return "my take.wav"%s`, if that is what came back
        """
            .formatted(missing),
        Run.of(command, "--reference", "sw.wav", "my take.wav").err());
    assertEquals(
        "unknown option '--retrun'",
        Run.of("analyze", "--json", "--retrun", "a.wav").error("text"));
  }

  @Test
  void aWrongArgumentIsOneJsonDocumentWhenAskedFor() {
    Run run = Run.of("--json", "--nothing-like-this");
    assertEquals(ExitCode.USAGE, run.exitCode());
    assertEquals("", run.err());
    Map<String, Object> json = run.json();
    assertEquals(List.of("schema", "command", "outcome", "error"), List.copyOf(json.keySet()));
    assertEquals(1, json.get("schema"));
    assertEquals("error", json.get("outcome"));
    assertEquals("wrong-arguments", run.error("code"));
    assertEquals("unknown option '--nothing-like-this'", run.error("text"));
  }

  @Test
  void aDocumentOfAFailureNamesNoFolder() {
    String file = folder.resolve("nowhere.yaml").toString();
    assertEquals("no chain file nowhere.yaml", Run.of("budget", file, "--json").error("text"));
    assertTrue(Run.of("budget", file).err().contains("no chain file " + file));
  }

  @Test
  void anOptionMaySayTrue() {
    assertEquals("error", Run.of("budget", "nowhere.yaml", "--json=true").json().get("outcome"));
  }

  @Test
  void anArgumentThatStartsWithAnAtIsItself() {
    assertTrue(Run.of("budget", "@nowhere.yaml").err().contains("@nowhere.yaml"));
  }

  @Test
  void aResultThatCannotBeWrittenIsAFailure() throws IOException {
    Path chain = folder.resolve("chain.yaml");
    Files.writeString(
        chain,
        """
        sample-rate: 48000
        stages: { desk: { ms: 1 } }
        paths: { singer: { listener: house, stages: [desk] } }
        """);
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Console console =
        new Console(
            new BufferedReader(new StringReader("")),
            new PrintStream(new FullDisk(), true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false,
            Map.of());
    String[] args = {"budget", chain.toString()};
    assertEquals(ExitCode.USAGE, Main.run(args, console));
    assertTrue(err.toString(StandardCharsets.UTF_8).contains("could not be written"));
  }

  private static final class FullDisk extends OutputStream {
    @Override
    public void write(int b) throws IOException {
      throw new IOException("no space left");
    }
  }

  @Test
  void aStackTraceIsShownOnlyWithDebug() {
    assertFalse(Run.of("--nothing-like-this").err().contains("\tat "));
    assertTrue(Run.of("--debug", "--nothing-like-this").err().contains("\tat "));
  }

  @Test
  void speaksTheSameInAnyLocale() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.ROOT);
      String plain = Run.of("--help").out();
      for (String tag : List.of("de-DE", "ar-EG-u-nu-arab", "tr-TR")) {
        Locale.setDefault(Locale.forLanguageTag(tag));
        assertEquals(plain, Run.of("--help").out(), tag);
      }
    } finally {
      Locale.setDefault(before);
    }
  }
}
