package dev.loopgauge.cli.terminal;

import dev.loopgauge.job.Person;
import dev.loopgauge.job.StopSign;
import java.io.BufferedReader;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;

/**
 * What a command sees of the world around it, so that a test can stand in for a terminal.
 *
 * @param in what the user types
 * @param out results, in UTF-8, on a Windows console in its code page
 * @param err progress, warnings and errors, in the same
 * @param terminal whether somebody sits there who can answer
 * @param environment the environment variables
 * @param unread is asked to stop once nobody reads results any more
 */
public record Console(
    BufferedReader in,
    PrintStream out,
    PrintStream err,
    boolean terminal,
    Map<String, String> environment,
    StopSign unread)
    implements Person {
  /** One whose results are read to the end. */
  public Console(
      BufferedReader in,
      PrintStream out,
      PrintStream err,
      boolean terminal,
      Map<String, String> environment) {
    this(in, out, err, terminal, environment, new StopSign());
  }

  /**
   * The process's own streams. Java 22 and later hand out a {@code java.io.Console} even without a
   * terminal, unless told to keep to the old one.
   */
  @SuppressWarnings("SystemConsoleNull")
  public static Console ofProcess() {
    System.setProperty("jdk.console", "java.base");
    boolean terminal = System.console() != null;
    // The first name is Java 19's and later.
    String named = System.getProperty("stdout.encoding", System.getProperty("sun.stdout.encoding"));
    String system = System.getProperty("os.name");
    Optional<Charset> page = CodePage.of(system, terminal, named);
    StopSign unread = new StopSign();
    return new Console(
        new BufferedReader(new InputStreamReader(System.in, page.orElse(Charset.defaultCharset()))),
        utf8(FileDescriptor.out, page, unread::stop),
        utf8(FileDescriptor.err, page, () -> {}),
        terminal,
        terminal ? TerminalWidth.told(System.getenv(), system) : System.getenv(),
        unread);
  }

  /** A result as this terminal shows it: as wide as it is; elsewhere as it stands. */
  public String shown(String text) {
    Optional<Integer> columns = terminal ? TerminalWidth.columns(environment) : Optional.empty();
    return columns.isPresent() ? ScreenText.fitted(text, columns.get()) : text;
  }

  private static PrintStream utf8(
      FileDescriptor descriptor, Optional<Charset> page, Runnable readerGone) {
    OutputStream out = new OpenPipe(new FileOutputStream(descriptor), readerGone);
    return new PrintStream(
        page.isPresent() ? new CodePage(out, page.get()) : out, true, StandardCharsets.UTF_8);
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
