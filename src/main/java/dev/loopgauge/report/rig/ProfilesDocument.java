package dev.loopgauge.report.rig;

import dev.loopgauge.report.form.Document;
import java.util.List;
import java.util.Map;

/**
 * The names of all profiles.
 *
 * @param folder where they are
 * @param names their names
 */
public record ProfilesDocument(String folder, List<String> names) implements Document {
  /** Copies the list. */
  public ProfilesDocument {
    names = List.copyOf(names);
  }

  @Override
  public String text() {
    return names.isEmpty()
        ? "No profiles in " + folder + ".\n  try  `loopgauge profile save NAME --backend ...`\n"
        : String.join("\n", names) + "\n";
  }

  @Override
  public Map<String, Object> json() {
    Map<String, Object> json = Document.head("profile list", "listed");
    json.put("folder", folder);
    json.put("profiles", names);
    return json;
  }
}
