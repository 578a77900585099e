package dev.loopgauge.cli.option;

import java.util.Optional;
import picocli.CommandLine.Option;

/** Which journal results are kept in, and for which show. */
public class ShowOptions {
  @Option(
      names = "--journal",
      paramLabel = "FILE",
      arity = "0..1",
      fallbackValue = "",
      description =
          "Keep results in the journal: the default one, the one that LOOPGAUGE_JOURNAL names, or"
              + " FILE or jdbc:postgresql://HOST/DATABASE.")
  private Optional<String> journal = Optional.empty();

  @Option(names = "--show", paramLabel = "NAME", description = "The show to keep them under.")
  private Optional<String> show = Optional.empty();

  /** Where to keep results: empty text for the default journal; empty to keep none. */
  public Optional<String> journal() {
    return journal;
  }

  /** The show. */
  public Optional<String> show() {
    return show;
  }
}
