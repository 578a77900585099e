package dev.loopgauge.report.rig;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.setup.Profile;
import java.nio.file.Path;

/**
 * What a profile says.
 *
 * @param command the command that shows it
 * @param name its name
 * @param file its file
 * @param profile what it says
 */
public record ProfileDocument(
    String command, String outcome, String name, Path file, ProfileRecord profile)
    implements Document {
  /** The document of a profile. */
  public static ProfileDocument of(String command, String name, Path file, Profile profile) {
    return new ProfileDocument(command, "profile", name, file, ProfileRecord.of(profile));
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet().line(name + ", in " + file);
    profile.tell(sheet);
    return sheet.row("use it", "loopgauge measure --profile '" + name + "'").toString();
  }
}
