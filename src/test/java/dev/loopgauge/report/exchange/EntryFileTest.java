package dev.loopgauge.report.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.journal.Entries;
import dev.loopgauge.journal.Entry;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class EntryFileTest {
  private static String written(boolean csv, List<Entry> entries) throws IOException {
    StringWriter out = new StringWriter();
    try (EntryWriter writer = csv ? EntryWriter.csv(out) : EntryWriter.json(out)) {
      for (Entry entry : entries) {
        writer.write(entry);
      }
    }
    return out.toString();
  }

  /** As a file on the disk would come back. */
  private static String throughUtf8(String text) {
    return new String(text.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8);
  }

  private static List<Entry> nasty(long seed, int count) {
    SplittableRandom random = new SplittableRandom(seed);
    List<Entry> entries = new ArrayList<>(List.of(Entries.entry(1)));
    for (int n = 0; n < count; n++) {
      entries.add(Entries.nasty(n, random));
    }
    return entries;
  }

  @Tag("campaign")
  @ParameterizedTest
  @CsvSource({"true, 1", "true, 22", "true, 333", "false, 1", "false, 22", "false, 333"})
  void nothingIsLostOnTheWayOutAndBack(boolean csv, long seed) throws Exception {
    List<Entry> entries = nasty(seed, 300);
    String file = throughUtf8(written(csv, entries));
    assertEquals(entries, EntryFile.read(file, "file"), "seed " + seed);
    assertEquals(file, written(csv, EntryFile.read(file, "file")), "seed " + seed);
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void anyCharacterIsKept(boolean csv) throws Exception {
    StringBuilder all = new StringBuilder();
    for (int c = 0; c < 0x3000; c++) {
      all.append((char) c);
    }
    all.append("\uDFFF \uD800 \uFEFF \uFFFE \uFFFF");
    Entry plain = Entries.entry(1);
    Entry entry =
        new Entry(
            plain.heading(),
            Optional.of(all.toString()),
            plain.setup(),
            all.reverse().toString(),
            plain.chain(),
            plain.card(),
            plain.capture(),
            "=1+1");
    assertEquals(List.of(entry), EntryFile.read(throughUtf8(written(csv, List.of(entry))), "f"));
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void noEntriesAreAnExportToo(boolean csv) throws Exception {
    assertEquals(List.of(), EntryFile.read(written(csv, List.of()), "file"));
  }

  /** Exports of the journal's version 1 don't say how everything stood. */
  @ParameterizedTest
  @CsvSource({"false, '\"standing\":\"good\",', ''", "true, ',standing', ',good'"})
  void exportOfOlderVersionIsRead(boolean csv, String key, String value) throws Exception {
    Entry entry = Entries.entry(1);
    String older = written(csv, List.of(entry)).replaceFirst(key, "").replaceFirst(value, "");
    assertFalse(older.contains("standing") || older.contains("good"), older);
    Entry read = EntryFile.read(older, "f").get(0);
    assertEquals(Optional.empty(), read.heading().standing());
    assertEquals(entry.document(), read.document());
    assertEquals(entry.heading().delay(), read.heading().delay());
  }

  /** What a spreadsheet would count as a formula is not tampered with. */
  @Test
  void formulasStandInCsvAsTheyAre() throws Exception {
    Entry plain = Entries.entry(1);
    Entry entry =
        new Entry(
            plain.heading(),
            Optional.of("=1+1"),
            plain.setup(),
            plain.document(),
            plain.chain(),
            plain.card(),
            plain.capture(),
            "@x");
    assertTrue(written(true, List.of(entry)).contains(",=1+1,"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "false | \"journal export\" | \"budget\"       | f:1: expected an export of a journal",
        "false | \"schema\":1       | \"schema\":2     | f:1: expected schema 1, found '2'",
        "false | \"show\":          | \"shaw\":        | f:2: expected a known key, found 'shaw'",
        "false | \"before\"         | \"whenever\"     | f:2: expected before, during or after",
        "false | \"good\"           | \"fine\"         | f:2: expected good, bad, undecided or",
        "false | :595.0             | :\"many\"       | f:2: expected a finite number under",
        "false | 48000              | 48               | f:2: expected a sample rate under",
        "false | \"Europe/Lisbon\"  | \"Nowhere\"      | f:2: expected a time zone under 'zone'",
        "false | 00.125Z            | 00.1255Z         | f:2: expected an entry that can be",
        "false | \"blockSize\":64   | \"blockSize\":0  | f:2: expected a number of samples, 1 or",
        "false | \"blockSize\":64   | \"blockSize\":null | f:2: expected 'backend' and 'blockSize'",
        "false | \"0.1.0\"          | null             | f:2: expected a text under 'toolVersion'",
        "false | \"0.1.0\"          | {}               | f:2: expected a text under 'toolVersion'",
        "false | ]}                 | ]                | f:4: expected a JSON document",
        "false | ]}                 | ]}{}             | found more behind its end",
        "true  | id,at              | it,at            | f:1: expected the keys of a journal",
        "true  | id,at              | id,id            | f:1: expected the 25 keys",
        "true  | before             | whenever         | f:2: expected before, during or after",
        "true  | jack               | jack,            | f:1: expected a table in CSV",
        "true  | 48000              | 48.0             | f:2: expected a sample rate under",
        "true  | 595                | NaN              | f:2: expected a finite number under"
      })
  void foreignFilesAreRefusedWithTheirPlace(boolean csv, String good, String bad, String told)
      throws IOException {
    String file = written(csv, List.of(Entries.entry(1)));
    assertTrue(file.contains(good), file);
    ExchangeException refused =
        assertThrows(
            ExchangeException.class,
            () -> EntryFile.read(file.replaceFirst(Pattern.quote(good), bad), "f"));
    assertTrue(refused.getMessage().contains(told), refused.getMessage());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "{}", "{", "[]", "hello", "a,b\n1,2", "{\"entries\": 3}", "\"", "\u0000"})
  void whatIsNoExportAtAllIsRefused(String text) {
    assertThrows(ExchangeException.class, () -> EntryFile.read(text, "f"));
  }

  /** Cut anywhere, a file is refused or gives the entries before the cut, and never breaks. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void cutFilesNeverGiveHalfAnEntry(boolean csv) throws Exception {
    List<Entry> entries = nasty(9, 3);
    String file = written(csv, entries);
    for (int end = 0; end < file.length() - 3; end++) {
      try {
        List<Entry> read = EntryFile.read(file.substring(0, end), "f");
        assertTrue(csv, "cut at " + end);
        assertEquals(
            entries.subList(0, Math.max(0, read.size() - 1)),
            read.subList(0, Math.max(0, read.size() - 1)));
      } catch (ExchangeException e) {
        assertTrue(e.getMessage().startsWith("f:"), e.getMessage());
      }
    }
  }
}
