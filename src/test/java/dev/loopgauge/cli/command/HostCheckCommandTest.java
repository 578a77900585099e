package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.cli.Recorded;
import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A plug-in that adds 240 samples to a path of 526, and what its host says about it. */
class HostCheckCommandTest {
  @TempDir private Path folder;
  private String sent = "";
  private String active = "";
  private String bypassed = "";

  @BeforeEach
  void writeFiles() throws AudioFileException {
    sent = Recorded.write(folder.resolve("sent.wav"), Recorded.sweep(0, 1, 1)).toString();
    active = Recorded.write(folder.resolve("active.wav"), Recorded.sweep(766, 0.5, 2)).toString();
    bypassed = Recorded.write(folder.resolve("off.wav"), Recorded.sweep(526, 0.5, 3)).toString();
  }

  private Run analyze(String... more) {
    List<String> args = new ArrayList<>(List.of("analyze", "--reference", sent));
    args.addAll(List.of(more));
    return Run.of(args.toArray(String[]::new));
  }

  private static Map<?, ?> check(Run run) {
    return (Map<?, ?>) run.json().get("hostCheck");
  }

  private static double number(Run run, String key) {
    return ((Number) check(run).get(key)).doubleValue();
  }

  @Test
  void confirmsWhatAHostReportsOfThePath() {
    Run run = analyze("--return", active, "--reported-samples=766", "--json");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out());
    assertEquals(true, check(run).get("agrees"));
    assertEquals(766, number(run, "reportedSamples"));
    assertEquals(0, number(run, "differenceSamples"), 0.01);
  }

  @Test
  void findsWhatAPluginAddsThatReportsLess() {
    Run run =
        analyze("--return", active, "--bypassed", bypassed, "--reported-samples=64", "--json");
    assertEquals(ExitCode.OUTSIDE, run.exitCode(), run.out());
    assertEquals("measured", run.json().get("outcome"));
    assertEquals(false, check(run).get("agrees"));
    assertEquals(240, number(run, "measuredSamples"), 0.01);
    assertEquals(176, number(run, "differenceSamples"), 0.01);
    assertTrue(number(run, "uncertaintySamples") > 0, run.out());
  }

  @Test
  void tellsAHostThatCompensatesFromOneThatMisreports() {
    Run compensates = analyze("--return", bypassed, "--bypassed", bypassed, "--reported-samples=0");
    assertEquals(ExitCode.GOOD, compensates.exitCode());
    assertTrue(compensates.out().contains("0 samples in, 0 out"), compensates.out());
    Run misreports = analyze("--return", active, "--bypassed", bypassed, "--reported-samples=0");
    assertEquals(ExitCode.OUTSIDE, misreports.exitCode());
    assertTrue(
        misreports.out().contains("samples and reports none: the host can't"), misreports.out());
    Run takesBack = analyze("--return", bypassed, "--bypassed", bypassed, "--reported-ms=5.00");
    assertEquals(ExitCode.OUTSIDE, takesBack.exitCode());
    assertTrue(takesBack.out().contains("compensates, or"), takesBack.out());
  }

  @Test
  void withoutAReportItSaysWhatThePluginAdds() {
    Run run = analyze("--return", active, "--bypassed", bypassed, "--json");
    assertEquals(ExitCode.GOOD, run.exitCode(), run.out());
    assertTrue(check(run).containsKey("agrees") && check(run).get("agrees") == null, run.out());
    assertEquals(240, number(run, "measuredSamples"), 0.01);
  }

  @Test
  void twoSessionsWithReferenceAndReturnEachCanBeCompared() throws AudioFileException {
    String on = session("on.wav", 10, 360);
    String off = session("off2.wav", 30, 140);
    Run run = Run.of("analyze", "--reference", on, "--bypassed", off, "--json");
    assertEquals(350 - 110, number(run, "measuredSamples"), 0.01);
  }

  private String session(String name, int sentAt, int backAt) throws AudioFileException {
    return Recorded.write(
            folder.resolve(name), Recorded.sweep(sentAt, 1, 5), Recorded.sweep(backAt, 1, 6))
        .toString();
  }

  @Test
  void aSilentBypassedRecordingLeavesNoNumber() throws AudioFileException {
    String silent =
        Recorded.write(folder.resolve("silent.wav"), Recorded.sweep(0, 0, 7)).toString();
    Run run = analyze("--return", active, "--bypassed", silent, "--json");
    assertEquals(ExitCode.NOT_TRUSTWORTHY, run.exitCode(), run.out());
    assertEquals(null, run.json().get("measurement"));
    assertTrue(run.out().contains("when bypassed: "), run.out());
  }

  @Test
  void reportsGivenTwiceOrWrongAreRefused() {
    Run both = analyze("--return", active, "--reported-samples=1", "--reported-ms=1");
    assertEquals(ExitCode.USAGE, both.exitCode());
    assertEquals(ExitCode.USAGE, analyze("--return", active, "--reported-samples=-1").exitCode());
    assertEquals(ExitCode.USAGE, analyze("--return", active, "--reported-ms=x").exitCode());
  }
}
