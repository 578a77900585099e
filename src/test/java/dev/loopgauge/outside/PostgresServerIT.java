package dev.loopgauge.outside;

import static org.junit.jupiter.api.Assertions.assertNotEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@NeedsPostgres
@Timeout(120)
class PostgresServerIT {
  @Test
  void comesBackAfterItWasKilled() throws Exception {
    try (PostgresServer server = PostgresServer.start()) {
      String before = server.database();
      server.kill();
      server.restart();
      assertNotEquals(before, server.database());
    }
  }
}
