package dev.loopgauge.report.rig;

import dev.loopgauge.report.form.Document;
import java.nio.file.Path;
import java.util.List;

/**
 * The names of all profiles.
 *
 * @param folder where they are
 * @param profiles their names
 */
public record ProfilesDocument(String command, String outcome, Path folder, List<String> profiles)
    implements Document {
  /** The document of a folder and the names in it. */
  public static ProfilesDocument of(String command, Path folder, List<String> names) {
    return new ProfilesDocument(command, "listed", folder, List.copyOf(names));
  }

  @Override
  public String text() {
    return profiles.isEmpty()
        ? "No profiles in " + folder + ".\n  try  `loopgauge profile save NAME --backend ...`\n"
        : String.join("\n", profiles) + "\n";
  }
}
