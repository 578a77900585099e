package dev.loopgauge.cli.command;

import static java.util.Comparator.comparingInt;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.RateSource;
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
          MEASURE + BuiltInRig.NAME + " --chain FILE --path NAME",
          false,
          Optional.empty());

  private final AudioSystem audio;

  /** A command with back ends. */
  public DevicesCommand(AudioSystem audio) {
    this.audio = audio;
  }

  @Override
  public Answer answer() {
    List<Offer> offers =
        audio.real().get().stream().map(backend -> new Offer(backend, backend.look())).toList();
    Optional<Offer> best =
        offers.stream().filter(offer -> offer.worth() > 0).max(comparingInt(Offer::worth));
    List<Seen> seen = new ArrayList<>();
    for (Offer offer : offers) {
      seen.add(offer.seen(best.filter(offer::equals).map(Offer::why)));
    }
    seen.add(RIG);
    return Answer.good(DevicesDocument.of(seen));
  }

  /** What a back end offers. */
  private record Offer(AudioBackend backend, Availability availability) {
    Seen seen(Optional<String> take) {
      String name = backend.name();
      return new Seen(
          name, availability, command(name, availability), backend.isSampleLocked(), take);
    }

    /** A reference is worth most, then a delay that stays, then a rate that is the device's own. */
    int worth() {
      return command(backend.name(), availability).isEmpty()
          ? 0
          : 1 + (hasPairs() ? 4 : 0) + (backend.isSampleLocked() ? 2 : 0) + (ownRate() ? 1 : 0);
    }

    String why() {
      return (hasPairs() ? "room for a reference" : "no room for a reference, but nothing has more")
          + (backend.isSampleLocked() ? ", the same delay at each opening" : "")
          + (ownRate() ? ", runs at a rate of its own" : "");
    }

    private boolean hasPairs() {
      return command(backend.name(), availability).contains("--reference-send");
    }

    private boolean ownRate() {
      return availability instanceof Availability.Usable usable
          && usable.devices().stream().allMatch(one -> one.rateSource() != RateSource.ANY);
    }
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
