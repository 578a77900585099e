package dev.loopgauge.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Puts measurements together to one page. */
@Command(
    description = "Make one page of what was measured: for a browser, a phone or on paper.",
    footer = {"", "The page is one file that needs no network. Without -o, text is printed."})
final class ReportCommand implements Subcommand {
  @Option(
      names = "--from",
      paramLabel = "FILE",
      arity = "1..*",
      description = "Documents that commands printed with --json.")
  private List<Path> from = List.of();

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      description = "Write the report to this file; it must not exist.")
  private Optional<Path> output = Optional.empty();

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      converter = ReportFormat.Converter.class,
      description =
          "How to write it: html, json, csv or text (html to a file, text to the screen).")
  private Optional<ReportFormat> format = Optional.empty();

  @Override
  public Answer answer() {
    if (from.isEmpty()) {
      throw new UsageException(
          "expected what to report, found nothing",
          "give documents: `loopgauge report --from measured.json -o report.html`");
    }
    return new Reporting(ReportSources.ofFiles(from)).answer(format, output);
  }
}
