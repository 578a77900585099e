package dev.loopgauge.campaign;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The last commit that touched what decides a measurement: {@code estimate}, {@code stats} or
 * {@code signal}, or a room that a campaign names.
 *
 * @param commit its hash, or {@value #UNKNOWN}
 * @param changed whether these rooms hold what no commit has
 */
record Revision(String commit, boolean changed) {
  /** Where there is no git, or no history, as in an unpacked archive. */
  static final String UNKNOWN = "without-git";

  private static final String ALL_ROOMS = "src/main/java/dev/loopgauge/";
  private static final List<String> ROOMS = List.of("estimate", "stats", "signal");

  private static final int DIGITS = 15;
  private static final int SHOWN = 7;

  /**
   * Of a checkout, as git tells it.
   *
   * @param more the rooms that matter besides, as folders
   */
  static Revision of(Path checkout, String... more) {
    List<String> rooms = new ArrayList<>(ROOMS);
    rooms.addAll(List.of(more));
    rooms.replaceAll(ALL_ROOMS::concat);
    Optional<String> commit =
        git(checkout, rooms, "log", "-1", "--format=%H").filter(Revision::isHash);
    boolean changed =
        git(checkout, rooms, "status", "--porcelain").filter(s -> !s.isEmpty()).isPresent();
    return new Revision(commit.orElse(UNKNOWN), changed);
  }

  private static boolean isHash(String text) {
    return text.matches("[0-9a-f]{40}");
  }

  private static Optional<String> git(Path checkout, List<String> rooms, String... question) {
    List<String> command = new ArrayList<>(List.of("git"));
    command.addAll(List.of(question));
    command.add("--");
    command.addAll(rooms);
    try {
      Process git =
          new ProcessBuilder(command)
              .directory(checkout.toAbsolutePath().toFile())
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
      try (InputStream out = git.getInputStream()) {
        String told = new String(out.readAllBytes(), StandardCharsets.UTF_8).strip();
        return git.waitFor() == 0 ? Optional.of(told) : Optional.empty();
      }
    } catch (IOException e) {
      return Optional.empty();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    }
  }

  /** What all seeds of a campaign start from; always the same where no commit is known. */
  long seed() {
    return commit.equals(UNKNOWN) ? UNKNOWN.hashCode() : Long.parseLong(head(DIGITS), 16);
  }

  /** Whether it says all of what is tried. */
  boolean isCertain() {
    return !changed && !commit.equals(UNKNOWN);
  }

  /** How tables and logs name it. */
  String label() {
    return head(SHOWN) + (changed ? "-changed" : "");
  }

  private String head(int digits) {
    return commit.equals(UNKNOWN) ? UNKNOWN : commit.substring(0, digits);
  }
}
