package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.journal.Entries;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.KeptEntry;
import dev.loopgauge.journal.store.Journals;
import dev.loopgauge.report.exchange.ExchangeException;
import dev.loopgauge.report.exchange.ExportReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Exports and journals with bytes changed, lost, doubled or put in, by seeds: refused or read in
 * part, but never with another number, a trace or an exit code that isn't documented. {@code
 * -Dloopgauge.mutations=N} runs more of them.
 */
class MutatedJournalTest {
  private static final int RUNS = Integer.getInteger("loopgauge.mutations", 400);
  private static final int JOURNALS = Math.max(1, RUNS / 10);
  private static final long SEED = 20_261_129;

  @TempDir private Path folder;

  private Run run(String... args) {
    return Run.on(false, "", environment(), args);
  }

  private Map<String, String> environment() {
    return Map.of("LOOPGAUGE_JOURNAL", folder.resolve("journal.db").toString());
  }

  private List<Entry> fill() throws Exception {
    SplittableRandom random = new SplittableRandom(SEED);
    List<Entry> entries = new ArrayList<>(List.of(Entries.entry(1), Entries.entry(2)));
    for (int n = 3; n < 12; n++) {
      entries.add(Entries.nasty(n, random));
    }
    try (Journal journal = Journals.open(folder.resolve("journal.db").toString(), Map.of())) {
      journal.append(entries);
    }
    return entries;
  }

  private static byte[] mutated(byte[] whole, SplittableRandom random) {
    byte[] bytes = whole.clone();
    for (int times = 1 + random.nextInt(3); times > 0 && bytes.length > 1; times--) {
      bytes = once(bytes, random);
    }
    return bytes;
  }

  private static byte[] once(byte[] bytes, SplittableRandom random) {
    int at = random.nextInt(bytes.length);
    int end = Math.min(bytes.length, at + 1 + random.nextInt(300));
    byte[] head = Arrays.copyOf(bytes, at);
    return switch (random.nextInt(4)) {
      case 0 -> changed(bytes, at, random);
      case 1 -> joined(head, Arrays.copyOfRange(bytes, end, bytes.length));
      case 2 -> joined(Arrays.copyOf(bytes, end), Arrays.copyOfRange(bytes, at, bytes.length));
      default -> head;
    };
  }

  private static byte[] changed(byte[] bytes, int at, SplittableRandom random) {
    byte[] changed = bytes.clone();
    changed[at] = (byte) (changed[at] ^ (1 << random.nextInt(8)));
    return changed;
  }

  private static byte[] joined(byte[] head, byte[] tail) {
    byte[] joined = Arrays.copyOf(head, head.length + tail.length);
    System.arraycopy(tail, 0, joined, head.length, tail.length);
    return joined;
  }

  @ParameterizedTest
  @ValueSource(strings = {"csv", "json"})
  void aMutatedExportIsRefusedOrHoldsTheSameEntries(String format) throws Exception {
    List<Entry> entries = fill();
    Path out = folder.resolve("out");
    run("journal", "export", "--format", format, "-o", out.toString());
    byte[] whole = Files.readAllBytes(out);
    for (int n = 0; n < RUNS; n++) {
      byte[] bytes = mutated(whole, new SplittableRandom(SEED + n));
      String text = new String(bytes, StandardCharsets.UTF_8);
      try {
        List<Entry> read =
            ExportReader.read(text, "f").entries().stream().map(KeptEntry::entry).toList();
        assertTrue(entries.containsAll(read), "seed " + (SEED + n));
        assertEquals(entries.size(), read.size(), "seed " + (SEED + n));
      } catch (ExchangeException e) {
        assertTrue(e.getMessage().matches("(?s)f:[0-9]+: expected .*"), e.getMessage());
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"list", "export", "check", "list --shows"})
  void aMutatedJournalIsReadAsFarAsItIsWhole(String command) throws Exception {
    List<String> ids = fill().stream().map(e -> e.heading().id().toString()).toList();
    Path file = folder.resolve("journal.db");
    byte[] whole = Files.readAllBytes(file);
    for (int n = 0; n < JOURNALS; n++) {
      Files.write(file, mutated(whole, new SplittableRandom(SEED + n)));
      Run run = run((("journal " + command) + " --json").split(" "));
      String told = "seed " + (SEED + n) + ": " + run.out() + run.err();
      assertTrue(List.of(ExitCode.GOOD, ExitCode.JOURNAL).contains(run.exitCode()), told);
      assertFalse(told.contains("something went wrong"), told);
      assertFalse(told.contains("\tat "), told);
      if (run.json().get("entries") instanceof List<?> read) {
        read.forEach(entry -> assertTrue(ids.contains(((Map<?, ?>) entry).get("id")), told));
      }
    }
  }
}
