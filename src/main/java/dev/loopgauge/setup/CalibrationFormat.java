package dev.loopgauge.setup;

import dev.loopgauge.measure.Calibration;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.signal.SampleRate;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** A calibration as settings. */
final class CalibrationFormat {
  private CalibrationFormat() {}

  static Map<String, Object> write(Calibration calibration) {
    Map<String, Object> settings = new LinkedHashMap<>();
    settings.put("measured-at", calibration.measuredAt().toString());
    settings.put("backend", calibration.backend());
    settings.put("output", calibration.output());
    settings.put("input", calibration.input());
    settings.put("sample-rate", calibration.rate().hertz());
    settings.put("buffer", calibration.bufferSamples());
    settings.put("send", calibration.cable().send());
    settings.put("return", calibration.cable().ret());
    calibration
        .reference()
        .ifPresent(
            pair -> {
              settings.put("reference-send", pair.send());
              settings.put("reference-return", pair.ret());
            });
    settings.put("delay-samples", calibration.delaySamples());
    settings.put("uncertainty-samples", calibration.uncertaintySamples());
    return settings;
  }

  static Calibration read(Settings settings) throws SetupException {
    Instant measuredAt = settings.required("measured-at", "a date and time", Instant::parse);
    String backend = settings.required("backend", "a back end", Function.identity());
    String output = settings.required("output", "a device", Function.identity());
    String input = settings.required("input", "a device", Function.identity());
    SampleRate rate = settings.required("sample-rate", "a rate in Hz", Formats::rate);
    int buffer = settings.required("buffer", "a number of samples", Integer::valueOf);
    int send = settings.required("send", "a channel", Integer::valueOf);
    ChannelPair cable = settings.required("return", "a channel", Formats.pairWith(send));
    Optional<ChannelPair> reference = reference(settings);
    double delay = settings.required("delay-samples", "a number of samples", Double::valueOf);
    Calibration calibration =
        settings.required(
            "uncertainty-samples",
            "a number of samples",
            text ->
                new Calibration(
                    backend,
                    output,
                    input,
                    rate,
                    buffer,
                    cable,
                    reference,
                    delay,
                    Double.parseDouble(text),
                    measuredAt));
    settings.refuseTheRest();
    return calibration;
  }

  private static Optional<ChannelPair> reference(Settings settings) throws SetupException {
    Optional<Integer> send = settings.optional("reference-send", "a channel", Integer::valueOf);
    return send.isEmpty()
        ? Optional.empty()
        : Optional.of(
            settings.required("reference-return", "a channel", Formats.pairWith(send.get())));
  }
}
