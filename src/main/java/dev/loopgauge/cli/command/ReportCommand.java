package dev.loopgauge.cli.command;

import dev.loopgauge.cli.option.Converters;
import dev.loopgauge.cli.terminal.Console;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.kept.JournalName;
import dev.loopgauge.job.kept.ReportFormat;
import dev.loopgauge.job.kept.ReportSources;
import dev.loopgauge.job.kept.Reporting;
import dev.loopgauge.job.kept.SoundPart;
import dev.loopgauge.journal.Journal;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.journal.store.Journals;
import dev.loopgauge.report.html.PageLayout;
import dev.loopgauge.report.html.ReportDocument;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Puts measurements together to one page. */
@Command(
    sortOptions = false,
    description = {
      "Make one page of what was measured: for a browser, a phone or on paper.",
      "",
      "The page is one file that needs no network. Without -o, text is printed. Without --show and --from it tells of the last show in the journal."
    },
    footer = {"  loopgauge report --show 'Harbour, Friday' -o friday.html"})
public final class ReportCommand implements Subcommand {
  private final Console console;

  @Option(
      names = "--show",
      paramLabel = "NAME",
      description = "What the journal keeps of this show, and of its paths before.")
  private Optional<String> show = Optional.empty();

  @Option(
      names = "--journal",
      paramLabel = "FILE",
      description = "The journal (what LOOPGAUGE_JOURNAL names, else the default one).")
  private Optional<String> journal = Optional.empty();

  @Option(
      names = "--from",
      paramLabel = "FILE",
      arity = "1..*",
      description =
          "Documents that commands printed with --json; beside a show, or alone. A round counts as its paths.")
  private List<Path> from = List.of();

  @Option(
      names = "--title",
      paramLabel = "TEXT",
      description = "What stands at its head (the show's name).")
  private Optional<String> title = Optional.empty();

  @Option(names = "--by", paramLabel = "TEXT", description = "Who measured.")
  private Optional<String> by = Optional.empty();

  @Option(names = "--full", description = "Unfold all and draw every plot; the page gets long.")
  private boolean full;

  @Option(
      names = {"-o", "--out"},
      paramLabel = "FILE",
      description = "Write the report to this file; it must not exist.")
  private Optional<Path> output = Optional.empty();

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      converter = Converters.Format.class,
      description =
          "How to write it: html, json, csv or text (html to a file, text to the screen). In csv,"
              + " texts that a spreadsheet would run as formulas begin with an apostrophe.")
  private Optional<ReportFormat> format = Optional.empty();

  /** The command on this console. */
  public ReportCommand(Console console) {
    this.console = console;
  }

  @Override
  public Answer answer() throws JournalException {
    if (show.isEmpty() && journal.isEmpty() && !from.isEmpty()) {
      return answer(ReportSources.ofFiles(from));
    }
    String place = JournalName.of(journal, console.environment());
    try (Journal opened = Journals.openExisting(place, console.environment())) {
      return SoundPart.of(opened, answer(ReportSources.ofShow(opened, show, from)), console);
    }
  }

  private Answer answer(ReportDocument report) {
    return new Reporting(report.with(title, new PageLayout(by, full))).answer(format, output);
  }
}
