package dev.loopgauge.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.cli.Run;
import dev.loopgauge.cli.terminal.ExitCode;
import dev.loopgauge.journal.Entries;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.Heading;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.When;
import dev.loopgauge.journal.store.Journals;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Journals with rows that somebody changed, or that a newer or older program wrote. */
class DamagedJournalTest {
  private static final String SHOW = "Harbour, Friday";

  /** Where the journal is made that has each cell damaged. */
  @TempDir private static Path shared;

  @TempDir private Path folder;
  private Path file;

  @BeforeEach
  void name() {
    file = folder.resolve("journal.db");
  }

  private Run run(String... args) {
    return Run.on(false, "", Map.of("LOOPGAUGE_JOURNAL", file.toString()), args);
  }

  private void fill(int entries) throws Exception {
    try (Journal journal = Journals.open(file.toString(), Map.of())) {
      for (int from = 0; from < entries; from += 1000) {
        List<Entry> some = new ArrayList<>();
        for (int n = from; n < Math.min(entries, from + 1000); n++) {
          When when = n % 2 == 0 ? When.BEFORE : When.AFTER;
          some.add(Entries.entry(Entries.heading(n, SHOW, when, "path " + n % 100 / 2, 595)));
        }
        journal.append(some);
      }
    }
  }

  private void meddle(String... statements) throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      for (String trigger : List.of("entry_is_kept", "entry_stays", "detail_is_kept")) {
        statement.execute("DROP TRIGGER IF EXISTS " + trigger);
      }
      for (String sql : statements) {
        statement.execute(sql);
      }
    }
  }

  /** Each of these ended with "something went wrong that should not", whatever made it so. */
  @ParameterizedTest
  @ValueSource(
      strings = {"list", "compare --show Lantern", "export", "history --path vocal-house", "check"})
  void aZoneThatWasChangedStopsNothing(String command) throws Exception {
    copy("journal-414846f.db");
    run("journal", "list");
    meddle("UPDATE entry SET zone = 'Europe/Lantern' WHERE day_part = 'before'");
    Run run = run(("journal " + command).split(" "));
    assertEquals(ExitCode.JOURNAL, run.exitCode(), run.err() + run.out());
    String said = (run.err() + run.out()).replaceAll("\\s+", " ");
    assertTrue(said.contains("its digest doesn't match"), said);
  }

  private void copy(String kept) throws Exception {
    try (var in = DamagedJournalTest.class.getResourceAsStream(kept)) {
      Files.copy(in, folder.resolve(kept.endsWith(".db") ? "journal.db" : kept));
    }
  }

  @Test
  void aJournalKeptBy414846fOpens() throws Exception {
    copy("journal-414846f.db");
    Run list = run("journal", "list");
    assertEquals(ExitCode.GOOD, list.exitCode(), list.err());
    assertEquals(5, list.out().lines().count(), list.out());
    assertEquals(ExitCode.OUTSIDE, run("journal", "compare", "--show", "Lantern").exitCode());
    assertEquals(ExitCode.GOOD, run("journal", "history", "--path", "vocal-house").exitCode());
    Run check = run("journal", "check");
    assertEquals(ExitCode.GOOD, check.exitCode(), check.out());
    assertTrue(check.out().contains("entries      4\n"), check.out());
    assertTrue(check.out().contains("last one     2026-11-29 "), check.out());
    Run export = run("journal", "export", "-o", folder.resolve("again.json").toString());
    assertEquals(ExitCode.GOOD, export.exitCode(), export.err());
    assertTrue(export.out().startsWith("4 entries written"), export.out());
    assertEquals(ExitCode.GOOD, run("report", "--show", "Lantern").exitCode());
  }

  /** 414846f kept chain files' names as typed, with their folders. */
  @Test
  void foldersOfOldEntriesAreNotShownAndDontKeepThemFromBeingTakenAgain() throws Exception {
    copy("journal-414846f.db");
    Path out = folder.resolve("again.csv");
    run("journal", "export", "--format", "csv", "-o", out.toString());
    String id = Files.readString(out).lines().skip(1).findFirst().orElseThrow().split(",", 2)[0];
    for (String text :
        List.of(
            Files.readString(out),
            run("journal", "show", id).out(),
            run("journal", "show", id, "--json").out())) {
      assertTrue(text.contains("hall.yaml"), text);
      assertFalse(text.contains("shows/"), text);
    }
    Run again = run("journal", "import", out.toString());
    assertEquals("4 entries read, 0 of them new, 4 there already.\n", again.out(), again.err());
  }

  @ParameterizedTest
  @ValueSource(strings = {"export-414846f.csv", "export-414846f.json"})
  void anExportOf414846fIsTaken(String export) throws Exception {
    copy(export);
    Run run = run("journal", "import", folder.resolve(export).toString());
    assertEquals(ExitCode.GOOD, run.exitCode(), run.err());
    assertTrue(run.out().startsWith("4 entries read, 4 of them new"), run.out());
    assertTrue(run.out().contains("is of an older version"), run.out());
    assertEquals(ExitCode.GOOD, run("journal", "check").exitCode());
  }

  /** A newer laptop on a crew's journal. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "list",
        "list --shows",
        "compare --show y",
        "export",
        "export --format csv",
        "export --json",
        "history --path vocal-house",
        "check",
        "show 1234"
      })
  void anEntryFromAZoneThatThisComputerDoesNotKnowIsReadByItsOffset(String command)
      throws Exception {
    keepFromUnknownZone();
    Run run = run(("journal " + command).split(" "));
    assertTrue(
        List.of(ExitCode.GOOD, ExitCode.NOT_TRUSTWORTHY).contains(run.exitCode()), run.err());
    assertEquals("", run.err());
  }

  @Test
  void anUnknownZoneGoesOutAndBackWithItsName() throws Exception {
    keepFromUnknownZone();
    Path out = folder.resolve("out.csv");
    run("journal", "export", "--format", "csv", "-o", out.toString());
    assertTrue(Files.readString(out).contains(",Europe/Lantern,\\+03:00,"), Files.readString(out));
    file = folder.resolve("other.db");
    assertEquals(ExitCode.GOOD, run("journal", "import", out.toString()).exitCode());
    assertEquals(ExitCode.GOOD, run("journal", "check").exitCode());
    assertTrue(run("journal", "list", "--json").out().contains("+03:00"));
  }

  private void keepFromUnknownZone() throws Exception {
    Heading plain = Entries.heading(1, "y", When.BEFORE, "vocal-house", 595);
    Heading foreign =
        new Heading(
            plain.id(),
            plain.at().withZoneSameInstant(ZoneOffset.ofHours(3)),
            plain.show(),
            plain.when(),
            plain.path(),
            plain.outcome(),
            plain.standing(),
            plain.delay(),
            plain.corrects(),
            Optional.of("Europe/Lantern"));
    try (Journal journal = Journals.open(file.toString(), Map.of())) {
      journal.append(List.of(Entries.entry(foreign)));
    }
  }

  @Test
  void whatIsNotWholeIsNamedAndTheRestShown() throws Exception {
    fill(2000);
    damageFifty(2000);
    assertAllNameFifty(2000);
  }

  /** 6,000 in each build, 100,000 by {@code -Dloopgauge.full=true}: what is done is the same. */
  @Tag("campaign")
  @Test
  void manyThousandEntriesWithFiftyDamagedOnes() throws Exception {
    int entries = Boolean.getBoolean("loopgauge.full") ? 100_000 : 6_000;
    fill(entries);
    damageFifty(entries);
    assertAllNameFifty(entries);
  }

  /** Of each part that can be changed some. */
  private void damageFifty(int entries) throws Exception {
    int step = entries / 50;
    String each = " WHERE (number - 1) % " + step + " = 0 AND (number - 1) / " + step + " % 5 = ";
    String details = " WHERE entry_id IN (SELECT id FROM entry" + each;
    meddle(
        "UPDATE entry SET zone = 'Europe/Lantern'" + each + 0,
        "UPDATE entry SET delay_samples = 1e300" + each + 1,
        "UPDATE entry SET rate_hz = -1" + each + 2,
        "UPDATE entry SET show_name = show_name || ''" + each + 3,
        "UPDATE entry SET outcome = 'loud'" + each + 3,
        "UPDATE detail SET document = substr(document, 1, 20)" + details + 4 + ")",
        "UPDATE entry SET uncertainty_samples = -1" + each + 4);
  }

  private void assertAllNameFifty(int entries) throws Exception {
    Path out = folder.resolve("out.json");
    assertNamesFifty(run("journal", "list", "--last", String.valueOf(entries)));
    assertNamesFifty(run("journal", "compare", "--show", SHOW));
    assertNamesFifty(run("journal", "list", "--shows"));
    assertNamesFifty(run("journal", "export", "-o", out.toString()));
    Run check = run("journal", "check");
    assertNamesFifty(check);
    assertTrue(check.out().contains("entries      " + entries), check.out());
    assertEquals(50, namedByHistory().size());
    Run rescued =
        Run.on(
            false,
            "",
            Map.of("LOOPGAUGE_JOURNAL", folder.resolve("rescued.db").toString()),
            "journal",
            "import",
            out.toString());
    assertEquals(ExitCode.GOOD, rescued.exitCode(), rescued.err());
    assertTrue(rescued.out().startsWith(entries - 50 + " entries read"), rescued.out());
    assertTrue(rescued.out().contains("out.json lacks 50 entries"), rescued.out());
  }

  private Set<String> namedByHistory() {
    Set<String> named = new TreeSet<>();
    for (int path = 0; path < 50; path++) {
      Run run = run("journal", "history", "--path", "path " + path);
      named.addAll(named(run));
      int expected = named(run).isEmpty() ? ExitCode.GOOD : ExitCode.JOURNAL;
      assertEquals(expected, run.exitCode(), run.err());
    }
    return named;
  }

  private static void assertNamesFifty(Run run) {
    assertEquals(ExitCode.JOURNAL, run.exitCode(), run.err());
    assertEquals(50, named(run).size(), run.err());
  }

  private static Set<String> named(Run run) {
    Set<String> named = new TreeSet<>();
    Matcher matcher =
        Pattern.compile("entry\\s+([0-9a-f-]{36})\\s+(?:is|holds)").matcher(run.err() + run.out());
    while (matcher.find()) {
      named.add(matcher.group(1));
    }
    return named;
  }

  private static final List<String> VALUES =
      List.of(
          "NULL", "''", "'x'", "-1", "1e300", "9223372036854775807", "x'00ff'", "'\u20ac\u0000'");

  /**
   * Each cell of an entry of its own, with each of these; what the table itself refuses is left.
   */
  @Tag("campaign")
  @ParameterizedTest
  @ValueSource(
      strings = {
        "list --last 1000",
        "list --shows",
        "compare --show Harbour,_Friday",
        "export",
        "export --format csv",
        "history --path one",
        "check"
      })
  void anyDamagedCellStopsNoReader(String command) throws Exception {
    Files.copy(eachCellDamaged(), file);
    String[] args = ("journal " + command).split(" ");
    for (int i = 0; i < args.length; i++) {
      args[i] = args[i].replace('_', ' ');
    }
    Run run = run(args);
    assertEquals(ExitCode.JOURNAL, run.exitCode(), run.err() + run.out());
    String all = run.out() + run.err();
    assertFalse(all.contains("something went wrong") || all.contains("\tat "), all);
  }

  /** Made by the first who asks. */
  private Path eachCellDamaged() throws Exception {
    Path kept = shared.resolve("each-cell.db");
    if (!Files.exists(kept)) {
      int damaged = damageEachCell();
      assertTrue(damaged > 150, damaged + " cells");
      Files.move(file, kept);
    }
    return kept;
  }

  /** Gives how many cells were damaged. */
  private int damageEachCell() throws Exception {
    List<Entry> entries = new ArrayList<>();
    for (int n = 0; n < 400; n++) {
      When when = n % 2 == 0 ? When.BEFORE : When.AFTER;
      entries.add(Entries.entry(Entries.heading(n, SHOW, when, "one", 595)));
    }
    try (Journal journal = Journals.open(file.toString(), Map.of())) {
      journal.append(entries);
    }
    meddle();
    int damaged = 0;
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA ignore_check_constraints = ON");
      for (String table : List.of("entry", "detail")) {
        for (String column : columns(connection, table)) {
          for (String value : VALUES) {
            String id = entries.get(damaged).heading().id().toString();
            String key = table.equals("entry") ? "id" : "entry_id";
            try {
              statement.execute(
                  "UPDATE %s SET %s = %s WHERE %s = '%s'".formatted(table, column, value, key, id));
              damaged++;
            } catch (SQLException e) {
              // The table has a rule against it.
            }
          }
        }
      }
    }
    return damaged;
  }

  private static List<String> columns(Connection connection, String table) throws Exception {
    List<String> columns = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery("SELECT name FROM pragma_table_info('" + table + "')")) {
      while (row.next()) {
        columns.add(row.getString(1));
      }
    }
    return columns;
  }

  @Test
  void aDamagedEntryIsNotShownButSaid() throws Exception {
    fill(2);
    meddle("UPDATE detail SET note = 'changed'");
    Run run = run("journal", "show", Entries.entry(1).heading().id().toString());
    assertEquals(ExitCode.JOURNAL, run.exitCode());
    assertEquals("", run.out());
    assertTrue(run.err().contains("is not what was stored"), run.err());
  }

  @Test
  void aReportNamesWhatItLacks() throws Exception {
    fill(4);
    meddle("UPDATE detail SET note = 'changed' WHERE rowid = 1");
    Run run = run("report", "--show", SHOW, "--json");
    assertEquals(ExitCode.JOURNAL, run.exitCode(), run.err());
    assertEquals(1, ((List<?>) run.json().get("damaged")).size(), run.out());
  }

  @Test
  void noBytesAreNotClean() throws Exception {
    Files.createFile(file);
    Run run = run("journal", "check");
    assertEquals(ExitCode.JOURNAL, run.exitCode(), run.out());
    assertTrue(run.err().contains("is empty, 0 bytes"), run.err());
  }
}
