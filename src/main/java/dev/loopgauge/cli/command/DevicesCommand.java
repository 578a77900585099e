package dev.loopgauge.cli.command;

import static java.util.Comparator.comparingInt;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.live.AudioSystem;
import dev.loopgauge.job.live.BuiltInRig;
import dev.loopgauge.job.live.DeviceProbe;
import dev.loopgauge.report.rig.DevicesDocument;
import dev.loopgauge.report.rig.DevicesDocument.Probe;
import dev.loopgauge.report.rig.DevicesDocument.Seen;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToIntFunction;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Lists what can play and record. */
@Command(
    sortOptions = false,
    description = {"List back ends and devices, or say why one can't be used."},
    footer = {"  loopgauge devices", "  loopgauge devices --probe"})
public final class DevicesCommand implements Subcommand {
  /** Beside what is to be taken where more is there. */
  private static final String UNCOUNTED = "; devices marked ? were not compared";

  private static final String MEASURE = "loopgauge measure --backend ";

  /** The built-in rig, which is always there. */
  private static final Seen RIG =
      new Seen(
          BuiltInRig.NAME,
          new Availability.Usable(List.of(new AudioDevice("rig", 2, 2, List.of()))),
          MEASURE + BuiltInRig.NAME + " --chain FILE --path NAME",
          Optional.empty(),
          Map.of());

  private final AudioSystem audio;

  @Option(
      names = "--probe",
      description =
          "Open each device for a moment, playing nothing, to see that it opens; a program that holds"
              + " one alone may be disturbed.")
  private boolean probe;

  /** A command with back ends. */
  public DevicesCommand(AudioSystem audio) {
    this.audio = audio;
  }

  @Override
  public Answer answer() {
    List<Offer> offers =
        audio.real().get().stream()
            .map(backend -> probe ? Offer.probed(backend) : Offer.listed(backend))
            .toList();
    Optional<Offer> best =
        offers.stream().filter(offer -> offer.worth() > 0).max(comparingInt(Offer::worth));
    String but = offers.stream().anyMatch(Offer::hasUncounted) ? UNCOUNTED : "";
    List<Seen> seen = new ArrayList<>();
    for (Offer offer : offers) {
      seen.add(offer.seen(best.filter(offer::equals).map(chosen -> chosen.why() + but)));
    }
    seen.add(RIG);
    return Answer.good(DevicesDocument.of(seen));
  }

  /** What a back end offers, and what came of opening it. */
  private record Offer(String name, Availability availability, Map<String, Probe> probes) {
    static Offer listed(AudioBackend backend) {
      return new Offer(backend.name(), backend.look(), Map.of());
    }

    static Offer probed(AudioBackend backend) {
      Offer listed = listed(backend);
      List<DeviceProbe> probed =
          listed.devices().stream().map(device -> DeviceProbe.of(backend, device)).toList();
      Map<String, Probe> probes = new LinkedHashMap<>();
      probed.forEach(one -> probes.put(one.device().name(), one.probe()));
      return probed.isEmpty()
          ? listed
          : new Offer(
              backend.name(),
              new Availability.Usable(probed.stream().map(DeviceProbe::device).toList()),
              probes);
    }

    Seen seen(Optional<String> take) {
      return new Seen(name, availability, command(), take, probes);
    }

    private List<AudioDevice> devices() {
      return availability instanceof Availability.Usable usable ? usable.devices() : List.of();
    }

    boolean hasUncounted() {
      return devices().stream().anyMatch(device -> device.channels().isEmpty());
    }

    /** A reference is worth most, then a delay that stays, then a rate that is the device's own. */
    int worth() {
      return pair().isEmpty()
          ? 0
          : 1 + (hasPairs() ? 4 : 0) + (isLocked() ? 2 : 0) + (ownRate() ? 1 : 0);
    }

    String why() {
      return (hasPairs() ? "room for a reference" : "no room for a reference, but nothing has more")
          + (isLocked() ? ", the same delay at each opening" : "")
          + (ownRate() ? ", runs at a rate of its own" : "");
    }

    private Optional<Pair> pair() {
      return Pair.best(
          devices().stream()
              .flatMap(
                  device ->
                      device.channels().map(channels -> new Counted(device, channels)).stream())
              .toList());
    }

    private String command() {
      return pair().map(devices -> devices.command(name)).orElse("");
    }

    private boolean hasPairs() {
      return pair().filter(Pair::hasReference).isPresent();
    }

    private boolean isLocked() {
      return pair().filter(Pair::isLocked).isPresent();
    }

    private boolean ownRate() {
      return pair().filter(Pair::ownRate).isPresent();
    }
  }

  /** A device whose channels are known. */
  private record Counted(AudioDevice device, AudioDevice.Channels channels) {
    int sends() {
      return channels.sends();
    }

    int returns() {
      return channels.returns();
    }
  }

  /** Two devices to measure with, or one for both ways. */
  private record Pair(Counted output, Counted input) {
    /** One device with room for path and reference both ways; else the best of each. */
    static Optional<Pair> best(List<Counted> devices) {
      for (Counted device : devices) {
        if (device.sends() > 1 && device.returns() > 1) {
          return Optional.of(new Pair(device, device));
        }
      }
      return best(devices, Counted::sends)
          .flatMap(out -> best(devices, Counted::returns).map(in -> new Pair(out, in)));
    }

    /** The first device with two channels, for path and reference; else the first with one. */
    private static Optional<Counted> best(List<Counted> devices, ToIntFunction<Counted> count) {
      return devices.stream()
          .filter(device -> count.applyAsInt(device) > 1)
          .findFirst()
          .or(() -> devices.stream().filter(device -> count.applyAsInt(device) == 1).findFirst());
    }

    boolean hasReference() {
      return output.sends() > 1 && input.returns() > 1;
    }

    boolean isLocked() {
      return output.equals(input) && output.device().sampleLocked();
    }

    boolean ownRate() {
      return output.device().rateSource() != RateSource.ANY
          && input.device().rateSource() != RateSource.ANY;
    }

    String command(String backend) {
      return MEASURE
          + backend
          + " --output "
          + quoted(output.device().name())
          + " --input "
          + quoted(input.device().name())
          + (hasReference()
              ? " --send 2 --return 2 --reference-send 1 --reference-return 1"
              : " --send 1 --return 1");
    }
  }

  /** In double quotes, which the shells of all systems take. */
  private static String quoted(String name) {
    return '"' + name.replaceAll("([\"\\\\$`])", "\\\\$1") + '"';
  }
}
