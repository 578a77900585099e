package dev.loopgauge.cli.terminal;

import dev.loopgauge.job.Person;
import java.io.BufferedReader;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;

/**
 * What a command sees of the world around it, so that a test can stand in for a terminal.
 *
 * @param in what the user types
 * @param out results, in UTF-8
 * @param err progress, warnings and errors, in UTF-8
 * @param terminal whether somebody sits there who can answer
 * @param environment the environment variables
 */
public record Console(
    BufferedReader in,
    PrintStream out,
    PrintStream err,
    boolean terminal,
    Map<String, String> environment)
    implements Person {
  /**
   * The process's own streams. Java 22 and later hand out a {@code java.io.Console} even without a
   * terminal, unless told to keep to the old one.
   */
  @SuppressWarnings("SystemConsoleNull")
  public static Console ofProcess() {
    System.setProperty("jdk.console", "java.base");
    return new Console(
        new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset())),
        utf8(FileDescriptor.out),
        utf8(FileDescriptor.err),
        System.console() != null,
        System.getenv());
  }

  private static PrintStream utf8(FileDescriptor descriptor) {
    return new PrintStream(
        new OpenPipe(new FileOutputStream(descriptor)), true, StandardCharsets.UTF_8);
  }

  @Override
  public boolean present() {
    return terminal;
  }

  @Override
  public void say(String sentence) {
    err.println(sentence);
  }

  @Override
  public Optional<String> answer() throws IOException {
    return Optional.ofNullable(in.readLine());
  }

  @Override
  public boolean hasAnswered() throws IOException {
    return in.ready();
  }
}
