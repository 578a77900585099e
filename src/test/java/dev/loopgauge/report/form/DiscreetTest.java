package dev.loopgauge.report.form;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class DiscreetTest {
  private static String told(String text, String... places) {
    return new Discreet(List.of(places)).told(text);
  }

  @Test
  void filesAreToldByTheirNames() {
    assertEquals("no file 'rig.yaml'", told("no file '/srv/anna/rig.yaml'", "/srv/anna/rig.yaml"));
    assertEquals("no file shows/rig.yaml", told("no file shows/rig.yaml"));
    assertEquals("no file rig.yaml", told("no file shows/rig.yaml", "shows/rig.yaml"));
  }

  @Test
  void aRelativeNameIsAlsoKnownWhereItLies() {
    Path file = Path.of("shows", "rig.yaml").toAbsolutePath();
    assertEquals("no file rig.yaml", told("no file " + file, "shows/rig.yaml"));
  }

  @Test
  void filesBesideItAndTheUsersOwnAreToo() {
    assertEquals("a.wav, b.wav", told("/srv/anna/a.wav, /srv/anna/b.wav", "/srv/anna/a.wav"));
    assertEquals("notes", told(Path.of(System.getProperty("user.home"), "notes").toString()));
  }

  @Test
  void aFoldersNameWithinAnotherWordStays() {
    assertEquals("extra/b", told("extra/b", "a/rig.yaml"));
  }

  @Test
  void aDatabaseIsToldByItsNameAndItsServerNotAtAll() {
    assertEquals(
        "tour: Connection to the server refused",
        told(
            "jdbc:postgresql://desk.example:5432/tour: Connection to desk.example:5432 refused",
            "jdbc:postgresql://desk.example:5432/tour"));
  }

  @Test
  void whatIsNoFilesNameChangesNothing() {
    assertEquals("1/2 of it", told("1/2 of it", "\0", "", "--json"));
  }
}
