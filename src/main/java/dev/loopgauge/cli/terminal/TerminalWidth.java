package dev.loopgauge.cli.terminal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How wide a terminal is: what COLUMNS says, else what the terminal itself says to {@code stty}.
 */
final class TerminalWidth {
  private static final String VARIABLE = "COLUMNS";

  /** In narrower ones a row would have no room beside its label. */
  private static final int LEAST = 40;

  private static final Pattern SIZE = Pattern.compile("\\d+ (\\d{1,4})\\s*");
  private static final long PATIENCE_MS = 500;

  private TerminalWidth() {}

  /** The environment with the terminal's width, where that can be found out. */
  static Map<String, String> told(Map<String, String> environment, String system) {
    boolean known =
        environment.containsKey(VARIABLE) || system.toLowerCase(Locale.ROOT).startsWith("windows");
    Optional<String> asked = known ? Optional.empty() : asked();
    if (asked.isEmpty()) {
      return environment;
    }
    Map<String, String> told = new HashMap<>(environment);
    told.put(VARIABLE, asked.get());
    return told;
  }

  /** By POSIX, "stty", and what every one of them adds: {@code size}. */
  private static Optional<String> asked() {
    try {
      Process stty = new ProcessBuilder("sh", "-c", "stty size < /dev/tty").start();
      if (!stty.waitFor(PATIENCE_MS, TimeUnit.MILLISECONDS)) {
        stty.destroy();
        return Optional.empty();
      }
      return size(new String(stty.getInputStream().readAllBytes(), StandardCharsets.US_ASCII));
    } catch (IOException e) {
      return Optional.empty();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    }
  }

  /** Terminals that don't know say 0. */
  static Optional<String> size(String told) {
    Matcher size = SIZE.matcher(told);
    return size.matches()
        ? Optional.of(size.group(1)).filter(wide -> !wide.matches("0+"))
        : Optional.empty();
  }

  /** The columns that the environment tells of. */
  static Optional<Integer> columns(Map<String, String> environment) {
    return Optional.ofNullable(environment.get(VARIABLE))
        .filter(said -> said.matches("[0-9]{1,4}"))
        .map(said -> Math.max(LEAST, Integer.parseInt(said)));
  }
}
