package dev.loopgauge.cli.command;

import dev.loopgauge.cli.demo.Demo;
import dev.loopgauge.cli.demo.DemoFolder;
import dev.loopgauge.cli.terminal.Answer;
import dev.loopgauge.cli.terminal.UsageException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Shows the main job in the built-in rig. */
@Command(
    description = "Show the whole job in a built-in rig: no sound card, no questions.",
    footer = {
      "",
      "Writes its chain file, recordings and documents, so that you can go on from them."
    })
public final class DemoCommand implements Subcommand {
  @Option(
      names = "--folder",
      paramLabel = "DIR",
      description = "Where to write its files; left out, a new folder in loopgauge-demo.")
  private Optional<Path> folder = Optional.empty();

  @Override
  public Answer answer() throws Exception {
    return Answer.good(new Demo(place()).run());
  }

  private Path place() {
    try {
      return folder.isPresent()
          ? DemoFolder.empty(folder.get())
          : DemoFolder.next(Path.of("loopgauge-demo"));
    } catch (IOException e) {
      throw new UsageException(
          "can't make a folder for the demo's files: " + e.getMessage(),
          "name one with --folder that you may write to");
    }
  }
}
