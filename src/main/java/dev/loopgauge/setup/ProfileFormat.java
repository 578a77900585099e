package dev.loopgauge.setup;

import dev.loopgauge.measure.Calibration;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.MeasurementPlan;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.signal.PlayedStimulus;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.StimulusKind;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** A profile as settings, named like the options of {@code measure}. */
final class ProfileFormat {
  private static final String CHANNEL = "a channel, counted from 1";

  private ProfileFormat() {}

  static Map<String, Object> write(Profile profile) {
    Map<String, Object> settings = new LinkedHashMap<>();
    settings.put("backend", profile.backend());
    profile.output().ifPresent(output -> settings.put("output", output));
    profile.input().ifPresent(input -> settings.put("input", input));
    writePatching(profile.patching(), settings);
    profile.rate().ifPresent(rate -> settings.put("sample-rate", rate.hertz()));
    if (profile.bufferSamples() > 0) {
      settings.put("buffer", profile.bufferSamples());
    }
    writePlan(profile.plan(), settings);
    profile
        .calibration()
        .ifPresent(made -> settings.put("calibration", CalibrationFormat.write(made)));
    return settings;
  }

  private static void writePatching(Patching patching, Map<String, Object> settings) {
    settings.put("send", patching.rig().send());
    settings.put("return", patching.rig().ret());
    patching
        .reference()
        .ifPresent(
            pair -> {
              settings.put("reference-send", pair.send());
              settings.put("reference-return", pair.ret());
            });
  }

  private static void writePlan(MeasurementPlan plan, Map<String, Object> settings) {
    settings.put("stimulus", plan.stimulus().kind().label());
    settings.put("seconds", plan.stimulus().seconds());
    settings.put("level", plan.stimulus().levelDbfs());
    settings.put("repeat", plan.repeats());
    settings.put("max-delay", plan.maxDelaySeconds());
  }

  static Profile read(Settings settings) throws SetupException {
    String backend = settings.required("backend", "a back end", Function.identity());
    Optional<String> output = settings.optional("output", "a device", Function.identity());
    Optional<String> input = settings.optional("input", "a device", Function.identity());
    Patching patching = readPatching(settings);
    Optional<SampleRate> rate = settings.optional("sample-rate", "a rate in Hz", Formats::rate);
    int buffer = settings.optional("buffer", "a number of samples", Formats::size).orElse(0);
    MeasurementPlan plan = readPlan(settings);
    Optional<Settings> section = settings.section("calibration");
    Optional<Calibration> calibration =
        section.isPresent() ? Optional.of(CalibrationFormat.read(section.get())) : Optional.empty();
    settings.refuseTheRest();
    return new Profile(backend, output, input, patching, rate, buffer, plan, calibration);
  }

  private static Patching readPatching(Settings settings) throws SetupException {
    int send = settings.required("send", CHANNEL, Integer::valueOf);
    ChannelPair rig = settings.required("return", CHANNEL, Formats.pairWith(send));
    Optional<Integer> reference = settings.optional("reference-send", CHANNEL, Integer::valueOf);
    if (reference.isEmpty()) {
      return new Patching(rig, Optional.empty());
    }
    Function<String, ChannelPair> pair = Formats.pairWith(reference.get());
    return settings.required(
        "reference-return", CHANNEL, text -> new Patching(rig, Optional.of(pair.apply(text))));
  }

  private static MeasurementPlan readPlan(Settings settings) throws SetupException {
    StimulusKind kind = settings.required("stimulus", "click, sweep or mls", Formats::stimulus);
    double seconds = settings.required("seconds", "a number of seconds", Double::valueOf);
    PlayedStimulus stimulus =
        settings.required(
            "level",
            "a level in dBFS",
            text -> new PlayedStimulus(kind, seconds, Double.parseDouble(text)));
    int repeats = settings.required("repeat", "a number", Integer::valueOf);
    return settings.required(
        "max-delay",
        "a number of seconds",
        text -> new MeasurementPlan(stimulus, repeats, Double.parseDouble(text)));
  }
}
