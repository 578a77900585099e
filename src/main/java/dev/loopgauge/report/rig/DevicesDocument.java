package dev.loopgauge.report.rig;

import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.Table;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What can play and record.
 *
 * @param backends the back ends, in the order to show them
 */
public record DevicesDocument(String command, String outcome, List<BackendRecord> backends)
    implements Document {
  private static final String UNKNOWN = "?";

  /**
   * One back end, as it was seen.
   *
   * @param name its name
   * @param availability what it offers, or why it can't be used
   * @param command a command to copy; empty where there is none
   * @param take why it is the one to take; empty for all but one
   * @param probes what came of opening its devices, by their names; empty where that wasn't asked
   */
  public record Seen(
      String name,
      Availability availability,
      String command,
      Optional<String> take,
      Map<String, Probe> probes) {
    /** Copies the map. */
    public Seen {
      probes = Map.copyOf(probes);
    }
  }

  /**
   * What came of opening a device for a moment.
   *
   * @param rateHz the rate it opened at; empty where it didn't
   * @param bufferSamples the buffer that it took
   * @param whyNot why it doesn't open, one sentence
   */
  public record Probe(
      boolean opens,
      Optional<Integer> rateHz,
      Optional<Integer> bufferSamples,
      Optional<String> whyNot)
      implements Sparse {
    /** A device that opens. */
    public static Probe opened(int rateHz, int bufferSamples) {
      return new Probe(true, Optional.of(rateHz), Optional.of(bufferSamples), Optional.empty());
    }

    /** A device that doesn't. */
    public static Probe refused(String why) {
      return new Probe(false, Optional.empty(), Optional.empty(), Optional.of(why));
    }

    @Override
    public Set<String> leftOut() {
      return Set.of("rateHz", "bufferSamples", "whyNot");
    }

    private String text() {
      return opens
          ? "opens at " + rateHz.orElseThrow() + " Hz, buffer " + bufferSamples.orElseThrow()
          : whyNot.orElseThrow();
    }
  }

  /**
   * One back end.
   *
   * @param reason why it can't be used
   * @param hint what to try then
   * @param sampleLocked whether its devices are equally late at each opening; left out where some
   *     are and some aren't
   * @param take why it is the one to take
   */
  public record BackendRecord(
      String name,
      boolean usable,
      Optional<String> reason,
      Optional<String> hint,
      List<DeviceRecord> devices,
      Optional<String> measureCommand,
      Optional<Boolean> sampleLocked,
      Optional<String> take)
      implements Sparse {
    private static final String MIXED =
        "  sample-locked: the delay is the same at each opening; else patch a reference\n";

    private static BackendRecord of(Seen seen) {
      Optional<Availability.Unusable> unusable =
          seen.availability() instanceof Availability.Unusable not
              ? Optional.of(not)
              : Optional.empty();
      List<AudioDevice> devices =
          seen.availability() instanceof Availability.Usable usable ? usable.devices() : List.of();
      Optional<Boolean> locked = common(devices);
      return new BackendRecord(
          seen.name(),
          unusable.isEmpty(),
          unusable.map(Availability.Unusable::reason),
          unusable.map(Availability.Unusable::hint),
          devices.stream()
              .map(
                  device ->
                      DeviceRecord.of(device, locked.isEmpty(), seen.probes().get(device.name())))
              .toList(),
          Optional.of(seen.command()).filter(command -> !command.isEmpty()),
          locked,
          seen.take());
    }

    private static Optional<Boolean> common(List<AudioDevice> devices) {
      List<Boolean> kinds = devices.stream().map(AudioDevice::sampleLocked).distinct().toList();
      return kinds.size() == 1 ? Optional.of(kinds.get(0)) : Optional.empty();
    }

    @Override
    public Set<String> leftOut() {
      return Set.of("reason", "hint", "sampleLocked", "take");
    }

    private String text() {
      if (reason.isPresent()) {
        Sheet sheet = new Sheet().line(name + " can't be used: " + reason.get());
        hint.ifPresent(remedy -> sheet.row("try", remedy));
        return sheet.toString();
      }
      return name
          + "\n"
          + table()
          + uncounted()
          + probes()
          + sampleLocked.map(BackendRecord::counting).orElse(MIXED)
          + take.map(why -> "  take this one: " + why + "\n").orElse("")
          + measureCommand.map(measure -> "  " + measure + "\n").orElse("");
    }

    private String uncounted() {
      return devices.stream().allMatch(device -> device.sends().isPresent())
          ? ""
          : "  " + UNKNOWN + ": channels not counted: --probe opens it\n";
    }

    private static String counted(Optional<Integer> channels) {
      return channels.map(String::valueOf).orElse(UNKNOWN);
    }

    private String probes() {
      return devices.stream()
          .filter(device -> device.probe().isPresent())
          .map(device -> device.name() + ": " + device.probe().get().text())
          .map(told -> new Sheet().row("probed", told).toString())
          .collect(Collectors.joining());
    }

    private static String counting(boolean sampleLocked) {
      return sampleLocked
          ? "  sample-locked: the card's delay is the same at each opening\n"
          : "  not sample-locked: the card's delay changes at each opening, so patch a reference\n";
    }

    private String table() {
      Table<DeviceRecord> table =
          new Table<DeviceRecord>()
              .words("device", DeviceRecord::name)
              .figures("sends", device -> counted(device.sends()))
              .figures("returns", device -> counted(device.returns()))
              .words("rates in Hz", DeviceRecord::rates);
      if (sampleLocked.isEmpty()) {
        table.words("sample-locked", device -> device.sampleLocked().orElse(false) ? "yes" : "no");
      }
      return table.lines(devices).stream().map(line -> line + "\n").collect(Collectors.joining());
    }
  }

  /**
   * One device.
   *
   * @param sends how many channels it can play to; left out, as returns and rates are, where that
   *     was not counted
   * @param converts whether the system takes these and other rates and converts them, so that
   *     nothing is known of the device's own
   * @param sampleLocked whether it is equally late at each opening; left out where its back end
   *     says so of all
   * @param probe what came of opening it, where that was asked
   */
  public record DeviceRecord(
      String name,
      Optional<Integer> sends,
      Optional<Integer> returns,
      Optional<List<Integer>> ratesHz,
      Optional<Boolean> converts,
      Optional<Boolean> sampleLocked,
      Optional<Probe> probe)
      implements Sparse {
    private static DeviceRecord of(AudioDevice device, boolean mixed, Probe probe) {
      return new DeviceRecord(
          device.name(),
          device.channels().map(AudioDevice.Channels::sends),
          device.channels().map(AudioDevice.Channels::returns),
          device.channels().map(known -> device.rates().stream().map(SampleRate::hertz).toList()),
          Optional.of(device.rateSource() == RateSource.ANY).filter(any -> any),
          Optional.of(device.sampleLocked()).filter(locked -> mixed),
          Optional.ofNullable(probe));
    }

    @Override
    public Set<String> leftOut() {
      return Set.of("sends", "returns", "ratesHz", "converts", "sampleLocked", "probe");
    }

    private String rates() {
      if (ratesHz.isEmpty()) {
        return UNKNOWN;
      }
      return ratesHz.get().isEmpty() || converts.orElse(false)
          ? "any"
          : ratesHz.get().stream().map(String::valueOf).collect(Collectors.joining(" "));
    }
  }

  /** The document of what was seen. */
  public static DevicesDocument of(List<Seen> backends) {
    return new DevicesDocument(
        "devices", "listed", backends.stream().map(BackendRecord::of).toList());
  }

  @Override
  public String text() {
    return backends.stream().map(BackendRecord::text).collect(Collectors.joining("\n"));
  }
}
