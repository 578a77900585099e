package dev.loopgauge.job.event;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.job.UsageException;
import dev.loopgauge.metrics.Lines;
import dev.loopgauge.report.form.Json;
import dev.loopgauge.report.watch.WatchLine;
import dev.loopgauge.verify.watch.WatchEvent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

@DisabledOnOs(value = OS.WINDOWS, disabledReason = "runs programs of Unix")
@Timeout(120)
class OnEventTest {
  private static final WatchLine EVENT =
      Lines.event("wedge", WatchLine.Event.STEP, WatchEvent.Phase.STARTS);
  private static final Duration LONG = Duration.ofMinutes(1);
  private static final Pattern SLOW = Pattern.compile("too slow: (\\d+) event");

  @TempDir Path folder;
  private final BlockingQueue<String> told = new LinkedBlockingQueue<>();

  private OnEvent running(Duration limit, String... words) {
    return new OnEvent(new LimitedRun(List.of(words), limit), told::add);
  }

  @Test
  void handsOverTheEventAsOneLineOfJson() throws Exception {
    Path file = folder.resolve("with blanks.json");
    try (OnEvent outlet = running(LONG, "tee", "-a", file.toString())) {
      outlet.happens(EVENT);
      outlet.happens(EVENT);
    }
    String line = Json.line(EVENT.json());
    assertEquals(List.of(line, line), Files.readAllLines(file));
    assertEquals(List.of(), List.copyOf(told));
  }

  @Test
  void tellsOfOneThatFails() {
    try (OnEvent outlet = running(LONG, "false")) {
      outlet.happens(EVENT);
    }
    assertEquals(
        List.of("--on-event: false ended with 1 on the event of 21:14:03."), List.copyOf(told));
  }

  @Test
  void tellsOfOneThatCannotBeStarted() {
    try (OnEvent outlet = running(LONG, folder.resolve("gone").toString())) {
      outlet.happens(EVENT);
    }
    assertTrue(told.remove().contains("could not be started on the event of 21:14:03"));
  }

  /** It reads nothing, which must not matter; what it started is ended with it. */
  @Test
  void endsOneThatHangsWithWhatItStarted() throws Exception {
    Path script = folder.resolve("hang");
    Path child = folder.resolve("child");
    Files.writeString(script, "#!/bin/sh\nsleep 600 &\necho $! > '" + child + "'\nwait\n");
    assertTrue(script.toFile().setExecutable(true));
    try (OnEvent outlet = running(Duration.ofSeconds(5), script.toString())) {
      outlet.happens(EVENT);
      String wrong = told.poll(60, TimeUnit.SECONDS);
      assertEquals(
          "--on-event: " + script + " was ended after 5 s on the event of 21:14:03.", wrong);
    }
    long pid = Long.parseLong(Files.readString(child).strip());
    while (ProcessHandle.of(pid).flatMap(left -> left.info().command()).isPresent()) {
      Thread.onSpinWait();
    }
  }

  @Test
  void runsOneAtATimeAndTellsWhatIsLeftOut() throws Exception {
    Path script = folder.resolve("wait");
    Path go = folder.resolve("go");
    Files.writeString(script, "#!/bin/sh\nuntil [ -e '" + go + "' ]; do sleep 0.1; done\n");
    assertTrue(script.toFile().setExecutable(true));
    try (OnEvent outlet = running(LONG, script.toString())) {
      for (int i = 0; i < 1 + OnEvent.WAITING + 3; i++) {
        outlet.happens(EVENT);
      }
      Files.createFile(go);
    }
    assertEquals(
        List.of("--on-event: " + script + " was too slow: 3 events left out."), List.copyOf(told));
  }

  @Test
  void atTheEndTellsWhatIsLeftOut() throws Exception {
    int events = 5;
    try (OnEvent outlet = running(Duration.ofMillis(300), "sleep", "600")) {
      for (int i = 0; i < events; i++) {
        outlet.happens(EVENT);
      }
    }
    int left = 0;
    while (left < events) {
      String text = told.poll(60, TimeUnit.SECONDS);
      Matcher slow = SLOW.matcher(text);
      left += slow.find() ? Integer.parseInt(slow.group(1)) : 1;
      assertTrue(slow.reset().find() || text.contains("was ended after 0.3 s"), text);
    }
    assertEquals(events, left);
    assertEquals(List.of(), List.copyOf(told));
  }

  @Test
  void refusesProgramsThatAreNotThere() throws Exception {
    Path plain = Files.writeString(folder.resolve("plain"), "no program");
    for (String command :
        List.of("no-such-program-anywhere x", "'" + plain + "'", "'" + folder + "'")) {
      assertThrows(UsageException.class, () -> OnEvent.running(command, told::add), command);
    }
    OnEvent.running("sleep 1", told::add).close();
  }
}
