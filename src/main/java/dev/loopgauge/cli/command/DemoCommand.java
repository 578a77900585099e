package dev.loopgauge.cli.command;

import dev.loopgauge.capture.FileTrouble;
import dev.loopgauge.cli.demo.Demo;
import dev.loopgauge.cli.demo.DemoFolder;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.job.live.BuiltInRig;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Shows the main job in the built-in rig. */
@Command(
    sortOptions = false,
    description = {
      "Show the whole job in a built-in rig: no sound card, no questions.",
      "",
      "Writes its chain file, recordings and documents, so that you can go on from them."
    },
    footer = {"  loopgauge demo"})
public final class DemoCommand implements Subcommand {
  private final BuiltInRig rig;

  @Option(
      names = "--folder",
      paramLabel = "DIR",
      description = "Where to write its files; left out, a new folder in loopgauge-demo.")
  private Optional<Path> folder = Optional.empty();

  /** A demo in this rig. */
  public DemoCommand(BuiltInRig rig) {
    this.rig = rig;
  }

  @Override
  public Answer answer() throws Exception {
    return Answer.good(new Demo(place(), rig).run());
  }

  private Path place() {
    try {
      return folder.isPresent()
          ? DemoFolder.empty(folder.get())
          : DemoFolder.next(Path.of("loopgauge-demo"));
    } catch (IOException e) {
      throw new UsageException(
          "can't make a folder for the demo's files: " + FileTrouble.reason(e),
          "name one with --folder that you may write to");
    }
  }
}
