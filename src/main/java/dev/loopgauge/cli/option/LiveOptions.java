package dev.loopgauge.cli.option;

import dev.loopgauge.measure.Patching;
import dev.loopgauge.setup.DataFolder;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.setup.SetupException;
import java.util.Optional;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What all commands that play and record take. */
public final class LiveOptions {
  /** The back end that is the built-in rig. */
  public static final String SIMULATED = "simulated";

  @Option(
      names = "--profile",
      paramLabel = "NAME",
      description = "A kept profile; other options overrule what it says.")
  public Optional<String> profile = Optional.empty();

  @Mixin public final DeviceOptions device = new DeviceOptions();
  @Mixin public final StimulusOptions stimulus = new StimulusOptions();

  /** The profile, if one was named. */
  public Optional<Profile> kept(DataFolder data) throws SetupException {
    return profile.isPresent()
        ? Optional.of(data.profiles().load(profile.get()))
        : Optional.empty();
  }

  /** All together: the options, over the profile, over the defaults. */
  public Profile settings(Optional<Profile> kept) {
    return new Profile(
        device.backend(kept),
        device.output(kept),
        device.input(kept),
        device.patching(kept),
        device.rate(kept),
        device.bufferSamples(kept),
        stimulus.plan(kept),
        kept.flatMap(Profile::calibration));
  }

  /**
   * The same with the send and the return on the ports of a program of the audio server, the first
   * ones unless others are named.
   */
  public Profile settingsThrough(String client, Optional<Profile> kept) {
    Patching usual = kept.map(Profile::patching).orElse(Patching.single(1, 1));
    return new Profile(
        device.backend(kept),
        Optional.of(client),
        Optional.of(client),
        device.patchingOver(Optional.of(usual)),
        device.rate(kept),
        device.bufferSamples(kept),
        stimulus.plan(kept),
        Optional.empty());
  }
}
