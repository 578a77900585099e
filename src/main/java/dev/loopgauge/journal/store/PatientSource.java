package dev.loopgauge.journal.store;

import java.sql.SQLException;
import org.sqlite.BusyHandler;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConnection;
import org.sqlite.SQLiteDataSource;

/** Opens connections to a SQLite file that take turns with those of other programs. */
final class PatientSource extends SQLiteDataSource {
  PatientSource(SQLiteConfig config) {
    super(config);
  }

  @Override
  public SQLiteConnection getConnection(String user, String password) throws SQLException {
    SQLiteConnection connection = super.getConnection(user, password);
    BusyHandler.setHandler(connection, new TakingTurns());
    return connection;
  }
}
