package dev.loopgauge.fuzz;

import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Runs the coverage-guided fuzzer on each target for a slice, in a process of 256 MiB. Arguments:
 * the folder that keeps inputs from slice to slice, the seconds of a slice, the target or {@code
 * all}. Each slice goes on from the inputs of those before; LOG.md in the folder has a row for
 * each. Ends with 1 where anything was found: the input lies in the target's folder.
 */
final class FuzzSlices {
  private static final String LOG_HEAD =
      "| date | commit | target | runs | seconds | found |\n|---|---|---|---|---|---|\n";

  private static final Pattern RUNS = Pattern.compile("stat::number_of_executed_units: (\\d+)");

  /** A hang is what takes longer. */
  private static final int LONGEST_SECONDS = 20;

  private final Path folder;
  private final String commit;
  private final int seconds;

  private FuzzSlices(Path folder, int seconds) throws IOException {
    this.folder = folder;
    this.commit = commit();
    this.seconds = seconds;
  }

  private static String commit() throws IOException {
    return new ProcessBuilder("git", "describe", "--always", "--dirty")
        .start()
        .inputReader(StandardCharsets.UTF_8)
        .lines()
        .findFirst()
        .orElse("unknown");
  }

  /** Runs a slice of each target. */
  public static void main(String[] args) throws Exception {
    FuzzSlices slices =
        new FuzzSlices(Path.of(args[0]).toAbsolutePath(), Integer.parseInt(args[1]));
    boolean found = false;
    for (String target : args[2].equals("all") ? Targets.NAMES : List.of(args[2])) {
      found |= slices.run(target);
    }
    if (found) {
      throw new IllegalStateException("something was found: see " + slices.folder);
    }
  }

  private boolean run(String target) throws Exception {
    Path corpus = Files.createDirectories(folder.resolve(target).resolve("corpus"));
    int number = 0;
    for (byte[] seed : Targets.of(target, Files.createTempDirectory("seeds")).seeds()) {
      Files.write(corpus.resolve("seed-" + number++), seed);
    }
    Path told = folder.resolve(target).resolve("told.txt");
    boolean found = process(target, corpus, told) != 0;
    log(target, Files.readString(told, StandardCharsets.ISO_8859_1), found);
    return found;
  }

  /** Inputs that were found are written into the folder that it runs in. */
  private int process(String target, Path corpus, Path told)
      throws IOException, InterruptedException {
    List<String> command =
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Xmx256m",
            "-Dloopgauge.fuzz=" + target,
            "-cp",
            System.getProperty("java.class.path"),
            "com.code_intelligence.jazzer.Jazzer",
            "--target_class=" + FuzzedTarget.class.getName(),
            "--instrumentation_includes=dev.loopgauge.**",
            "--custom_hook_includes=dev.loopgauge.**",
            "--disabled_hooks=com.code_intelligence.jazzer.sanitizers.**",
            "-timeout=" + LONGEST_SECONDS,
            "-max_total_time=" + seconds,
            "-print_final_stats=1",
            corpus.toString());
    return new ProcessBuilder(command)
        .directory(folder.resolve(target).toFile())
        .redirectErrorStream(true)
        .redirectOutput(Redirect.to(told.toFile()))
        .start()
        .waitFor();
  }

  private void log(String target, String told, boolean found) throws IOException {
    Path log = folder.resolve("LOG.md");
    if (!Files.exists(log)) {
      Files.writeString(log, LOG_HEAD);
    }
    Matcher runs = RUNS.matcher(told);
    String row =
        "| %s | %s | %s | %s | %d | %s |%n"
            .formatted(
                LocalDate.now(ZoneOffset.UTC),
                commit,
                target,
                runs.find() ? runs.group(1) : "?",
                seconds,
                found ? "something" : "nothing");
    Files.writeString(log, row, StandardOpenOption.APPEND);
    System.out.print(row);
  }
}
