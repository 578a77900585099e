package dev.loopgauge.report.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.journal.Entries;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Keeping;
import dev.loopgauge.journal.KeptEntry;
import dev.loopgauge.journal.When;
import dev.loopgauge.report.form.Json;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ExportReaderTest {
  private static final Optional<Keeping> KEEPING =
      Optional.of(new Keeping("00", 7, "a".repeat(64), 1_777_000_000_000L));

  private static String written(boolean csv, List<Entry> entries) throws IOException {
    StringWriter out = new StringWriter();
    try (EntryWriter writer = csv ? EntryWriter.csv(out) : EntryWriter.json(out)) {
      for (Entry entry : entries) {
        writer.write(new KeptEntry(entry, KEEPING));
      }
      writer.end(0);
    }
    return out.toString();
  }

  private static List<Entry> read(String text) throws ExchangeException {
    return ExportReader.read(text, "f").entries().stream().map(KeptEntry::entry).toList();
  }

  /** The same as versions before wrote it: without digests and a line that says the end. */
  private static String older(boolean csv, List<Entry> entries) throws IOException {
    String file = written(csv, entries);
    return csv
        ? file.replaceFirst(",origin,.*,digest\r\n", "\r\n")
            .replaceFirst(",offset,", ",")
            .replaceAll("(UTC|Lisbon),[^,]*,", "$1,")
            .replaceAll("\\\\([+]05:45),[^,]*,", "$1,")
            .replaceAll(",00,7,[^,]*,[^,]*,[0-9a-f]{64}\r\n", "\r\n")
            .replaceFirst("end,[0-9]+,0,*\r\n$", "")
        : file.replaceAll(",\"origin\":\"00.*\"digest\":\"[0-9a-f]{64}\"", "")
            .replaceAll("\"offset\":\"[^\"]*\",", "")
            .replaceFirst(",\"written\":[0-9]+,\"leftOut\":0", "");
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
    assertEquals(entries, read(file), "seed " + seed);
    assertEquals(file, written(csv, read(file)), "seed " + seed);
    assertEquals(entries, read(older(csv, entries)), "seed " + seed);
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
            Json.line(
                Map.of("command", "x", "outcome", "measured", "text", all.reverse().toString())),
            plain.chain(),
            plain.card(),
            plain.capture(),
            "=1+1");
    assertEquals(List.of(entry), read(throughUtf8(written(csv, List.of(entry)))));
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void noEntriesAreAnExportToo(boolean csv) throws Exception {
    assertEquals(
        new EntryFile(List.of(), 0, true), ExportReader.read(written(csv, List.of()), "f"));
  }

  /** Exports of the journal's version 1 don't say how everything stood. */
  @ParameterizedTest
  @CsvSource({"false, '\"standing\":\"good\",', ''", "true, ',standing', ',good'"})
  void exportOfOlderVersionIsRead(boolean csv, String key, String value) throws Exception {
    Entry entry = Entries.entry(1);
    String older = older(csv, List.of(entry)).replaceFirst(key, "").replaceFirst(value, "");
    assertFalse(older.contains("standing,") || older.contains("\"standing\":"), older);
    EntryFile file = ExportReader.read(older, "f");
    assertFalse(file.saysItsEnd());
    assertEquals(Optional.empty(), file.entries().get(0).keeping());
    Entry read = file.entries().get(0).entry();
    assertEquals(Optional.empty(), read.heading().standing());
    assertEquals(entry.document(), read.document());
    assertEquals(entry.heading().delay(), read.heading().delay());
  }

  /** What a spreadsheet would run as a formula it shows as text, and import takes it as it was. */
  @Test
  void formulasAreGuardedInCsvAndComeBack() throws Exception {
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
    String file = written(true, List.of(entry));
    assertTrue(file.contains(",\\=1+1,") && file.contains(",\\@x,"), file);
    assertEquals(List.of(entry), read(file));
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
        "false | \"Europe/Lisbon\"  | \"Nowhere\"      | another: its digest doesn't match",
        "false | \"Europe/Lisbon\"  | 3                | f:2: expected a time zone under 'zone'",
        "false | \"+01:00\"         | \"late\"         | f:2: expected an offset such as",
        "false | \"number\":7       | \"number\":0     | f:2: expected a number, 1 or more",
        "false | \"link\":\"a       | \"link\":\"      | f:2: expected a digest under 'link'",
        "false | \"link\":\"a       | \"lunk\":\"a     | f:2: expected a known key",
        "false | 00.125Z            | 00.1255Z         | f:2: expected an entry that can be",
        "false | \"blockSize\":64   | \"blockSize\":0  | f:2: expected a number of samples, 1 or",
        "false | \"blockSize\":64   | \"blockSize\":null | f:2: expected 'backend' and 'blockSize'",
        "false | \"0.1.0\"          | null             | f:2: expected a text under 'toolVersion'",
        "false | \"0.1.0\"          | {}               | f:2: expected a text under 'toolVersion'",
        "false | 0}                 | 0                | f:4: expected a JSON document",
        "false | 0}                 | 0}{}             | found more behind its end",
        "false | written\":1         | written\":2       | f:3: expected '2' entries, found 1",
        "false | all as planned     | all is well      | another: its digest doesn't match",
        "false | all as planned     | all \uFFFD well    | f:2: expected text as it was typed",
        "true  | all as planned     | all \uFFFD well    | f:2: expected text as it was typed",
        "true  | end,1              | end,2            | f:3: expected '2' entries, found 1",
        "true  | end,1              | end,1\uFFFD         | f:3: expected '1\uFFFD' entries",
        "true  | end,1,0            | end,1,some       | f:3: expected how many entries were left",
        "true  | ,0.1.0,            | ,0.1.0,\",        | f:2: expected a table in CSV",
        "true  | id,at              | it,at            | f:1: expected the keys of a journal",
        "true  | id,at              | id,id            | f:1: expected the 31 keys",
        "true  | before             | whenever         | f:2: expected before, during or after",
        "true  | jack               | jack,            | f:2: expected 31 cells, found 32",
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
            () -> ExportReader.read(file.replaceFirst(Pattern.quote(good), bad), "f"));
    assertTrue(refused.getMessage().contains(told), refused.getMessage());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "{}", "{", "[]", "hello", "a,b\n1,2", "{\"entries\": 3}", "\"", "\u0000"})
  void whatIsNoExportAtAllIsRefused(String text) {
    assertThrows(ExchangeException.class, () -> ExportReader.read(text, "f"));
  }

  /** Cut anywhere but within the last line's end, a file is refused whole. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void cutFilesAreRefusedWhole(boolean csv) throws Exception {
    String file = written(csv, nasty(9, 3));
    for (int end = 0; end < file.length() - 3; end++) {
      String cut = file.substring(0, end);
      ExchangeException refused =
          assertThrows(ExchangeException.class, () -> ExportReader.read(cut, "f"), "cut at " + end);
      assertTrue(refused.getMessage().startsWith("f:"), refused.getMessage());
    }
  }

  /** Older exports don't say their end: cut within an entry they are refused all the same. */
  /** Only exports of older versions, which have no digests, lack it. */
  @Test
  void anExportWithoutItsCountIsRefused() throws Exception {
    String whole = written(false, List.of(Entries.entry(1)));
    String open = whole.replaceFirst(",\"written\":[0-9]+,\"leftOut\":0", "");
    ExchangeException refused = assertThrows(ExchangeException.class, () -> read(open));
    assertTrue(refused.getMessage().contains("how many entries there are"), refused.getMessage());
  }

  @Test
  void olderFilesCutWithinAnEntryAreRefused() throws Exception {
    String file = older(true, nasty(9, 3));
    for (int end = 0; end < file.length(); end++) {
      String cut = file.substring(0, end);
      if (!cut.endsWith("\n")) {
        assertThrows(ExchangeException.class, () -> ExportReader.read(cut, "f"), "cut at " + end);
      }
    }
  }

  /** Heading and document of an entry, changed alike or apart, with a digest that fits. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "measured     | measured | 595   | 595   | good | ``",
        "measured     | within   | 595   | 595   | good | the outcome 'measured' beside 'within' in its document",
        "loud         | loud     | 595   | 595   | good | a document that `measure` doesn't make",
        "measured     | measured | 595   | 596   | good | another delay than its document",
        "measured     | measured | 1e300 | 1e300 | good | a delay that no measurement has",
        "measured     | measured | 595   | 1e999 | good | another delay than its document",
        "measured     | measured | 595   | 595   | bad  | another standing than its document tells"
      })
  void headingAndDocumentTellTheSame(
      String outcome, String told, double samples, String written, String standing, String wrong) {
    Heading heading = Entries.heading(1, "x", When.BEFORE, "p", samples);
    String document =
        """
        {"command":"measure","outcome":"%s","verdict":{"standing":"%s"},
         "measurement":{"sampleRateHz":48000,"delaySamples":%s,"uncertaintySamples":0.04}}
        """
            .formatted(told, standing, written);
    Entry plain = Entries.entry(heading);
    Entry entry =
        new Entry(
            new Heading(
                heading.id(),
                heading.at(),
                heading.show(),
                heading.when(),
                heading.path(),
                outcome,
                heading.standing(),
                heading.delay(),
                heading.corrects()),
            plain.note(),
            plain.setup(),
            document,
            plain.chain(),
            plain.card(),
            plain.capture(),
            plain.toolVersion());
    assertEquals(wrong, EntryCheck.wrong(entry).orElse("").replaceFirst(":.*", ""));
  }
}
