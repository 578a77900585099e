package dev.loopgauge.cli.command;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.live.AudioSystem;
import dev.loopgauge.job.live.BuiltInRig;
import dev.loopgauge.report.rig.DevicesDocument;
import dev.loopgauge.report.rig.DevicesDocument.Seen;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToIntFunction;
import picocli.CommandLine.Command;

/** Lists what can play and record. */
@Command(
    sortOptions = false,
    description = {"List back ends and devices, or say why one can't be used."},
    footer = {"  loopgauge devices"})
public final class DevicesCommand implements Subcommand {
  private static final String MEASURE = "loopgauge measure --backend ";

  /** The built-in rig, which is always there. */
  private static final Seen RIG =
      new Seen(
          BuiltInRig.NAME,
          new Availability.Usable(List.of(new AudioDevice("rig", 2, 2, List.of()))),
          MEASURE + BuiltInRig.NAME + " --chain FILE --path NAME");

  private final AudioSystem audio;

  /** A command with back ends. */
  public DevicesCommand(AudioSystem audio) {
    this.audio = audio;
  }

  @Override
  public Answer answer() {
    List<Seen> seen = new ArrayList<>();
    for (AudioBackend backend : audio.real().get()) {
      Availability availability = backend.look();
      seen.add(new Seen(backend.name(), availability, command(backend.name(), availability)));
    }
    seen.add(RIG);
    return Answer.good(DevicesDocument.of(seen));
  }

  private static String command(String backend, Availability availability) {
    if (!(availability instanceof Availability.Usable usable)) {
      return "";
    }
    Optional<AudioDevice> output = best(usable.devices(), AudioDevice::sends);
    Optional<AudioDevice> input = best(usable.devices(), AudioDevice::returns);
    if (output.isEmpty() || input.isEmpty()) {
      return "";
    }
    boolean pairs = output.get().sends() > 1 && input.get().returns() > 1;
    return MEASURE
        + backend
        + " --output "
        + quoted(output.get().name())
        + " --input "
        + quoted(input.get().name())
        + (pairs
            ? " --send 2 --return 2 --reference-send 1 --reference-return 1"
            : " --send 1 --return 1");
  }

  /** The first device with two channels, for path and reference; else the first with one. */
  private static Optional<AudioDevice> best(
      List<AudioDevice> devices, ToIntFunction<AudioDevice> count) {
    return devices.stream()
        .filter(device -> count.applyAsInt(device) > 1)
        .findFirst()
        .or(() -> devices.stream().filter(device -> count.applyAsInt(device) == 1).findFirst());
  }

  /** In double quotes, which the shells of all systems take. */
  private static String quoted(String name) {
    return '"' + name.replaceAll("([\"\\\\$`])", "\\\\$1") + '"';
  }
}
