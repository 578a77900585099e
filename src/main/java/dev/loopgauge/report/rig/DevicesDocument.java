package dev.loopgauge.report.rig;

import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Table;
import dev.loopgauge.signal.SampleRate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * What can play and record.
 *
 * @param backends the back ends, in the order to show them
 */
public record DevicesDocument(List<Seen> backends) implements Document {
  /**
   * One back end.
   *
   * @param name its name
   * @param availability what it offers, or why it can't be used
   * @param command a command to copy; empty where there is none
   */
  public record Seen(String name, Availability availability, String command) {}

  /** Copies the list. */
  public DevicesDocument {
    backends = List.copyOf(backends);
  }

  @Override
  public String text() {
    return backends.stream().map(DevicesDocument::text).collect(Collectors.joining("\n"));
  }

  private static String text(Seen seen) {
    if (seen.availability() instanceof Availability.Unusable unusable) {
      return new Sheet()
          .line(seen.name() + " can't be used: " + unusable.reason())
          .row("try", unusable.hint())
          .toString();
    }
    String measure = seen.command().isEmpty() ? "" : "  " + seen.command() + "\n";
    return seen.name() + "\n" + table(devices(seen)) + measure;
  }

  private static String table(List<AudioDevice> devices) {
    return new Table<AudioDevice>()
            .words("device", AudioDevice::name)
            .figures("sends", device -> String.valueOf(device.sends()))
            .figures("returns", device -> String.valueOf(device.returns()))
            .words("rates in Hz", DevicesDocument::rates)
            .lines(devices)
            .stream()
            .map(line -> line + "\n")
            .collect(Collectors.joining());
  }

  private static String rates(AudioDevice device) {
    return device.rates().isEmpty()
        ? "any"
        : device.rates().stream()
            .map(rate -> String.valueOf(rate.hertz()))
            .collect(Collectors.joining(" "));
  }

  @Override
  public Map<String, Object> json() {
    Map<String, Object> json = Document.head("devices", "listed");
    json.put("backends", backends.stream().map(DevicesDocument::json).toList());
    return json;
  }

  private static Map<String, Object> json(Seen seen) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("name", seen.name());
    json.put("usable", seen.availability() instanceof Availability.Usable);
    if (seen.availability() instanceof Availability.Unusable unusable) {
      json.put("reason", unusable.reason());
      json.put("hint", unusable.hint());
    }
    json.put("devices", devices(seen).stream().map(DevicesDocument::json).toList());
    json.put("measureCommand", seen.command().isEmpty() ? null : seen.command());
    return json;
  }

  private static Map<String, Object> json(AudioDevice device) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("name", device.name());
    json.put("sends", device.sends());
    json.put("returns", device.returns());
    json.put("ratesHz", device.rates().stream().map(SampleRate::hertz).toList());
    return json;
  }

  private static List<AudioDevice> devices(Seen seen) {
    return seen.availability() instanceof Availability.Usable usable ? usable.devices() : List.of();
  }
}
