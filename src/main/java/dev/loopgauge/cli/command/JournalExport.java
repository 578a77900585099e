package dev.loopgauge.cli.command;

import dev.loopgauge.capture.WholeFile;
import dev.loopgauge.cli.option.JournalPlace;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.kept.Exporting;
import dev.loopgauge.job.kept.JournalQueries;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.KeptEntry;
import dev.loopgauge.journal.Selection;
import dev.loopgauge.report.exchange.EntryKeys;
import dev.loopgauge.report.exchange.EntryWriter;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.logged.ExportDocument;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code journal export}. */
@Command(
    sortOptions = false,
    description = {
      "Write entries as CSV or JSON, for `journal import` or a spreadsheet.",
      "",
      "Recordings are named only: they lie beside the journal, copy them by hand. In CSV, texts that a spreadsheet would run as formulas begin with a backslash."
    },
    footer = {"  loopgauge journal export --format csv -o friday.csv"})
final class JournalExport implements Subcommand {
  /** How to write entries. */
  enum Format {
    /** A line for each, for spreadsheets. */
    csv,
    /** One document. */
    json
  }

  private final Console console;

  @Mixin private final JournalPlace place = new JournalPlace();

  @Option(names = "--format", paramLabel = "FORMAT", description = "csv or json (json).")
  private Format format = Format.json;

  @Option(
      names = {"-o", "--out"},
      paramLabel = "FILE",
      description = "Write to this file; it must not exist (the screen).")
  private Optional<Path> output = Optional.empty();

  @Option(names = "--show", paramLabel = "NAME", description = "Only this show.")
  private Optional<String> show = Optional.empty();

  JournalExport(Console console) {
    this.console = console;
  }

  /** An export on the screen. */
  private record Printed(String text, List<KeptEntry> entries, int leftOut) implements Document {
    @Override
    public Map<String, Object> json() {
      Map<String, Object> json = Document.head("journal export", "exported");
      json.put("entries", entries.stream().map(EntryKeys::of).toList());
      json.putAll(EntryWriter.counts(entries.size(), leftOut));
      return json;
    }
  }

  @Override
  public Answer answer() throws JournalException, IOException {
    try (Journal journal = place.open(console.environment())) {
      if (show.isPresent()) {
        new JournalQueries(journal).show(show.get());
      }
      Exporting export = new Exporting(journal, show.map(Selection::ofShow).orElse(Selection.ALL));
      Answer answer = output.isPresent() ? toFile(export, output.get()) : toScreen(export);
      return export.whole(answer, console);
    }
  }

  private Answer toScreen(Exporting export) throws JournalException, IOException {
    List<KeptEntry> entries = new ArrayList<>();
    StringWriter text = new StringWriter();
    export.write(writer(text), entries::add);
    return Answer.good(new Printed(text.toString(), entries, export.leftOut().size()));
  }

  private EntryWriter writer(Writer out) throws IOException {
    return format == Format.csv ? EntryWriter.csv(out) : EntryWriter.json(out);
  }

  private Answer toFile(Exporting export, Path file) throws JournalException, IOException {
    try {
      WholeFile.ownAt(file)
          .create(
              out -> {
                Writer text = new OutputStreamWriter(out, StandardCharsets.UTF_8);
                try (EntryWriter writer = writer(new BufferedWriter(text))) {
                  export.write(writer, entry -> {});
                }
              });
    } catch (FileAlreadyExistsException e) {
      throw new UsageException(
          file + " exists already, and nothing is overwritten", "give another name");
    }
    return Answer.good(
        ExportDocument.of(file, export.written(), export.recordings(), export.leftOut().size()));
  }
}
