package dev.loopgauge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.jr.ob.JSON;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.cli.wiring.Adapters;
import dev.loopgauge.job.live.AudioSystem;
import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;

/**
 * One command run in this process, and all it said.
 *
 * @param exitCode its exit code
 * @param out what it wrote to standard output
 * @param err what it wrote to standard error
 */
public record Run(int exitCode, String out, String err) {
  /** Runs a command without a terminal and without an environment. */
  public static Run of(String... args) {
    return on(false, "", Map.of(), args);
  }

  /** Runs a command with a terminal or without, what is typed, and an environment. */
  public static Run on(
      boolean terminal, String typed, Map<String, String> environment, String... args) {
    return on(terminal, typed, environment, Adapters.ofThisComputer(), args);
  }

  /** The same with back ends other than the computer's. */
  public static Run on(
      boolean terminal,
      String typed,
      Map<String, String> environment,
      AudioSystem backends,
      String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Console console =
        new Console(
            new BufferedReader(new StringReader(typed)),
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            terminal,
            environment);
    int exitCode = Main.run(List.of(args), console, backends);
    return new Run(
        exitCode, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  /** Standard output as the one JSON document it must be, by the schema of its command. */
  public Map<String, Object> json() {
    try {
      Map<String, Object> document =
          JSON.std.with(JSON.Feature.FAIL_ON_DUPLICATE_MAP_KEYS).mapFrom(out);
      assertEquals(List.of(), SchemaCheck.wrong(out), out);
      return document;
    } catch (IOException e) {
      throw new UncheckedIOException("not one JSON document: " + out, e);
    }
  }

  /** A key of the error in the JSON document. */
  public Object error(String key) {
    return ((Map<?, ?>) json().get("error")).get(key);
  }

  /** Checks that the command refused its input in two lines on standard error, saying this. */
  public void assertRefused(String told) {
    assertEquals(ExitCode.USAGE, exitCode, out);
    assertEquals("", out);
    assertTrue(err.contains(told), err);
    assertEquals(2, err.lines().count(), err);
  }
}
