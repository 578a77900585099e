package dev.loopgauge.journal.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.loopgauge.journal.Entries;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.outside.NeedsPostgres;
import dev.loopgauge.outside.PostgresServer;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.Timeout;

@NeedsPostgres
@Timeout(120)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class PostgresJournalIT extends JournalContract {
  private PostgresServer server;
  private String address;

  @BeforeAll
  void startServer() throws Exception {
    server = PostgresServer.start();
  }

  @AfterAll
  void endServer() throws Exception {
    if (server != null) {
      server.close();
    }
  }

  @BeforeEach
  void emptyDatabase() throws Exception {
    address = server.database();
  }

  @Override
  Journal open() throws JournalException {
    return Journals.open(address, server.environment());
  }

  @Override
  void meddle(String sql) throws Exception {
    Map<String, String> environment = server.environment();
    try (Connection connection =
            DriverManager.getConnection(
                address, environment.get("PGUSER"), environment.get("PGPASSWORD"));
        Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  @Override
  void unlock() throws Exception {
    meddle("ALTER TABLE entry DISABLE TRIGGER USER");
    meddle("ALTER TABLE detail DISABLE TRIGGER USER");
  }

  @Test
  void aWrongPasswordIsSaidAndNotRepeated() {
    Map<String, String> environment = new HashMap<>(server.environment());
    environment.put("PGPASSWORD", "open sesame");
    JournalException refused =
        assertThrows(JournalException.class, () -> Journals.open(address, environment));
    assertEquals("the journal " + address + " refuses this user or password", refused.getMessage());
    assertFalse((refused.getMessage() + refused.hint()).contains("sesame"), refused.hint());
  }

  @Test
  void aMissingDatabaseIsSaid() {
    JournalException refused =
        assertThrows(
            JournalException.class, () -> Journals.open(address + "x", server.environment()));
    assertEquals("the journal " + address + "x is not there", refused.getMessage());
  }

  @Test
  void aServerThatDiesKeepsWhatWasStored() throws Exception {
    try (Journal journal = open()) {
      journal.append(List.of(Entries.entry(1)));
      server.kill();
      JournalException lost =
          assertThrows(JournalException.class, () -> journal.append(List.of(Entries.entry(2))));
      assertEquals("the journal " + address + " can't be reached", lost.getMessage());
      JournalException away = assertThrows(JournalException.class, this::open);
      assertEquals("the journal " + address + " can't be reached", away.getMessage());
    } finally {
      server.restart();
    }
    try (Journal journal = open()) {
      assertEquals(List.of(Entries.entry(1).heading()), journal.headings(Selection.ALL));
      assertEquals(List.of(), journal.check());
    }
  }

  @Test
  void whoMayNotWriteIsTold() throws Exception {
    open().close();
    meddle("CREATE ROLE guest LOGIN PASSWORD 'guest'");
    meddle("GRANT SELECT ON ALL TABLES IN SCHEMA public TO guest");
    Map<String, String> guest = Map.of("PGUSER", "guest", "PGPASSWORD", "guest");
    try (Journal journal = Journals.open(address, guest)) {
      assertEquals(List.of(), journal.headings(Selection.ALL));
      JournalException refused =
          assertThrows(JournalException.class, () -> journal.append(List.of(Entries.entry(1))));
      assertEquals(
          "the journal " + address + " may not be used by this user", refused.getMessage());
    }
  }
}
