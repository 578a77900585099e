package dev.loopgauge.cli.command;

import dev.loopgauge.job.Answer;
import dev.loopgauge.report.form.Document;
import java.util.Map;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Prints what a shell needs to complete commands and options. */
@Command(
    hidden = true,
    description = "Print the completion script for bash and zsh.",
    footer = {"  eval \"$(loopgauge completion)\""})
public final class CompletionCommand implements Subcommand {
  @Spec private CommandSpec spec;

  /** A script on the screen. */
  private record Script(String text) implements Document {
    @Override
    public Map<String, Object> json() {
      Map<String, Object> json = Document.head("completion", "printed");
      json.put("script", text);
      return json;
    }
  }

  @Override
  public Answer answer() {
    return Answer.good(new Script(AutoComplete.bash("loopgauge", spec.parent().commandLine())));
  }
}
