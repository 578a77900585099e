package dev.loopgauge.fuzz;

import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.MeasurementPlan;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.setup.DataFolder;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.setup.ProfileStore;
import dev.loopgauge.signal.PlayedStimulus;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.StimulusKind;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Profiles, read and written again. */
final class ProfileTarget implements Target {
  private final ProfileStore store;

  ProfileTarget(Path folder) {
    store = new DataFolder(folder).profiles();
  }

  @Override
  public List<byte[]> seeds() throws Exception {
    Profile profile =
        new Profile(
            "java-sound",
            Optional.of("Stage card: out \"A\" # 1"),
            Optional.of("48000"),
            new Patching(new ChannelPair(2, 4), Optional.of(new ChannelPair(1, 3))),
            Optional.of(new SampleRate(96_000)),
            256,
            new MeasurementPlan(new PlayedStimulus(StimulusKind.MLS, 0.7, -31.5), 5, 1.25),
            Optional.of(CalibrationTarget.MADE));
    return List.of(Files.readAllBytes(store.replace("whole", profile)));
  }

  @Override
  public void check(byte[] input) throws Exception {
    Path file = store.file("fuzzed");
    Files.createDirectories(file.getParent());
    Files.write(file, input);
    Refusal.orRead(() -> store.replace("again", store.load("fuzzed")));
  }
}
