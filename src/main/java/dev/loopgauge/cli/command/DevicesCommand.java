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
        audio.real().get().stream().map(backend -> new Offer(backend, backend.look())).toList();
    Optional<Offer> best =
        offers.stream().filter(offer -> offer.worth() > 0).max(comparingInt(Offer::worth));
    List<Seen> seen = new ArrayList<>();
    for (Offer offer : offers) {
      seen.add(offer.seen(best.filter(offer::equals).map(Offer::why), probe));
    }
    seen.add(RIG);
    return Answer.good(DevicesDocument.of(seen));
  }

  /** What a back end offers. */
  private record Offer(AudioBackend backend, Availability availability) {
    Seen seen(Optional<String> take, boolean probe) {
      return new Seen(backend.name(), availability, command(), take, probe ? probes() : Map.of());
    }

    private Map<String, Probe> probes() {
      Map<String, Probe> probes = new LinkedHashMap<>();
      if (availability instanceof Availability.Usable usable) {
        usable
            .devices()
            .forEach(device -> probes.put(device.name(), DeviceProbe.of(backend, device)));
      }
      return probes;
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
      return availability instanceof Availability.Usable usable
          ? Pair.best(usable.devices())
          : Optional.empty();
    }

    private String command() {
      return pair().map(devices -> devices.command(backend.name())).orElse("");
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

  /** Two devices to measure with, or one for both ways. */
  private record Pair(AudioDevice output, AudioDevice input) {
    /** One device with room for path and reference both ways; else the best of each. */
    static Optional<Pair> best(List<AudioDevice> devices) {
      for (AudioDevice device : devices) {
        if (device.sends() > 1 && device.returns() > 1) {
          return Optional.of(new Pair(device, device));
        }
      }
      return best(devices, AudioDevice::sends)
          .flatMap(out -> best(devices, AudioDevice::returns).map(in -> new Pair(out, in)));
    }

    /** The first device with two channels, for path and reference; else the first with one. */
    private static Optional<AudioDevice> best(
        List<AudioDevice> devices, ToIntFunction<AudioDevice> count) {
      return devices.stream()
          .filter(device -> count.applyAsInt(device) > 1)
          .findFirst()
          .or(() -> devices.stream().filter(device -> count.applyAsInt(device) == 1).findFirst());
    }

    boolean hasReference() {
      return output.sends() > 1 && input.returns() > 1;
    }

    boolean isLocked() {
      return output.equals(input) && output.sampleLocked();
    }

    boolean ownRate() {
      return output.rateSource() != RateSource.ANY && input.rateSource() != RateSource.ANY;
    }

    String command(String backend) {
      return MEASURE
          + backend
          + " --output "
          + quoted(output.name())
          + " --input "
          + quoted(input.name())
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
