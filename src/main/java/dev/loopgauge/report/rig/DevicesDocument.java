package dev.loopgauge.report.rig;

import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Sparse;
import dev.loopgauge.report.form.Table;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
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
  /**
   * One back end, as it was seen.
   *
   * @param name its name
   * @param availability what it offers, or why it can't be used
   * @param command a command to copy; empty where there is none
   */
  public record Seen(String name, Availability availability, String command) {}

  /**
   * One back end.
   *
   * @param reason why it can't be used
   * @param hint what to try then
   */
  public record BackendRecord(
      String name,
      boolean usable,
      Optional<String> reason,
      Optional<String> hint,
      List<DeviceRecord> devices,
      Optional<String> measureCommand)
      implements Sparse {
    private static BackendRecord of(Seen seen) {
      Optional<Availability.Unusable> unusable =
          seen.availability() instanceof Availability.Unusable not
              ? Optional.of(not)
              : Optional.empty();
      List<AudioDevice> devices =
          seen.availability() instanceof Availability.Usable usable ? usable.devices() : List.of();
      return new BackendRecord(
          seen.name(),
          unusable.isEmpty(),
          unusable.map(Availability.Unusable::reason),
          unusable.map(Availability.Unusable::hint),
          devices.stream().map(DeviceRecord::of).toList(),
          Optional.of(seen.command()).filter(command -> !command.isEmpty()));
    }

    @Override
    public Set<String> leftOut() {
      return Set.of("reason", "hint");
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
          + measureCommand.map(measure -> "  " + measure + "\n").orElse("");
    }

    private String table() {
      return new Table<DeviceRecord>()
              .words("device", DeviceRecord::name)
              .figures("sends", device -> String.valueOf(device.sends()))
              .figures("returns", device -> String.valueOf(device.returns()))
              .words("rates in Hz", DeviceRecord::rates)
              .lines(devices)
              .stream()
              .map(line -> line + "\n")
              .collect(Collectors.joining());
    }
  }

  /** One device. */
  public record DeviceRecord(String name, int sends, int returns, List<Integer> ratesHz) {
    private static DeviceRecord of(AudioDevice device) {
      return new DeviceRecord(
          device.name(),
          device.sends(),
          device.returns(),
          device.rates().stream().map(SampleRate::hertz).toList());
    }

    private String rates() {
      return ratesHz.isEmpty()
          ? "any"
          : ratesHz.stream().map(String::valueOf).collect(Collectors.joining(" "));
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
