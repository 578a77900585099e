package dev.loopgauge.report.rig;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Sheet;
import java.util.List;

/**
 * A chain file that was written from answers.
 *
 * @param file the file, by its name alone
 * @param chain the rig's name
 * @param paths the names of its paths
 */
public record DraftDocument(
    String command, String outcome, String file, String chain, List<String> paths)
    implements Document {
  /** The document of a new file. */
  public static DraftDocument of(String file, Chain chain) {
    return new DraftDocument(
        "new", "written", file, chain.name(), List.copyOf(chain.paths().keySet()));
  }

  @Override
  public String text() {
    return new Sheet()
        .line("Written: " + file)
        .row(paths.size() == 1 ? "path" : "paths", String.join(", ", paths))
        .row("next", "open it and put your own stages in; its comments say how")
        .row("then", "`loopgauge check " + file + "`, `loopgauge budget " + file + "`")
        .toString();
  }
}
