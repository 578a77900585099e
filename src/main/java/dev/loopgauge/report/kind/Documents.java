package dev.loopgauge.report.kind;

import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.ErrorDocument;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads documents again, each by the command that made it. */
public final class Documents {
  private static final String UNKNOWN = "unknown";
  private static final List<String> MEASURING = List.of("measure", "analyze", "host");

  private Documents() {}

  /**
   * The document of a map.
   *
   * @param document the keys and their values, as {@link dev.loopgauge.report.form.Json#read} gives
   *     them
   * @return empty for another kind of document than those that can be read again, and for one that
   *     lacks what it can't be without
   */
  public static Optional<Document> read(Map<?, ?> document) {
    if (outcome(document).equals(ErrorDocument.OUTCOME)) {
      return Kind.ERROR.read(document);
    }
    String command = command(document);
    return OldKinds.of(command, document)
        .or(() -> Kind.of(command))
        .flatMap(kind -> kind.read(document));
  }

  /** Whether a command measures a path, trusted or not. */
  public static boolean measures(String command) {
    return MEASURING.contains(command);
  }

  /** Whether a document is of one path, measured or soaked, whose delay the journal keeps. */
  public static boolean isMeasured(Map<?, ?> document) {
    String command = command(document);
    return (measures(command) || command.equals("soak"))
        && OldKinds.of(command, document).isEmpty();
  }

  /** The command that made a document. */
  public static String command(Map<?, ?> document) {
    return text(document, "command");
  }

  /** What a document came to, by the name that documents use. */
  public static String outcome(Map<?, ?> document) {
    return text(document, "outcome");
  }

  private static String text(Map<?, ?> document, String key) {
    return document.get(key) instanceof String text ? text : UNKNOWN;
  }
}
