package dev.loopgauge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.cli.terminal.ExitCode;
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

class MainTest {
  @TempDir private Path folder;

  @Test
  void helpGoesToStandardOutputAndIsGood() {
    Run run = Run.of("--help");
    assertEquals(ExitCode.GOOD, run.exitCode());
    assertTrue(run.out().startsWith("Usage: loopgauge"), run.out());
    assertEquals("", run.err());
  }

  @Test
  void helpFitsInEightyColumns() {
    List<Run> helps = new ArrayList<>(List.of(Run.of("--help")));
    Commands.names().forEach(name -> helps.add(Run.of(name, "--help")));
    for (Run help : helps) {
      assertEquals(ExitCode.GOOD, help.exitCode());
      assertTrue(help.out().lines().allMatch(line -> line.length() <= 80), help.out());
    }
  }

  @Test
  void aNameThatNoFileCanHaveIsRefusedWithoutAnyClass() {
    for (List<String> args :
        List.of(
            List.of("budget", "a\0b"),
            List.of("analyze", "--reference", "a\0b"),
            List.of("journal", "import", "a\0b"))) {
      Run run = Run.of(args.toArray(String[]::new));
      assertEquals(ExitCode.USAGE, run.exitCode());
      assertTrue(run.err().contains("expected the name of a file"), run.err());
      assertFalse(run.err().contains("Exception"), run.err());
      assertFalse(run.err().contains("java."), run.err());
    }
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
