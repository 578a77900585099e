package dev.loopgauge.job.live;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.setup.DataFolder;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.setup.SetupException;
import java.util.Optional;

/**
 * What to play and record, and where: the choices, over those of a profile, over the defaults.
 *
 * @param profile the name of a kept profile
 */
public record LiveChoice(Optional<String> profile, DeviceChoice device, StimulusChoice stimulus) {
  /**
   * The profile, if one is named.
   *
   * @throws SetupException when there is none of that name, or it can't be read
   */
  Optional<Profile> kept(DataFolder data) throws SetupException {
    return profile.isPresent()
        ? Optional.of(data.profiles().load(profile.get()))
        : Optional.empty();
  }

  /**
   * The name of the back end.
   *
   * @throws SetupException as {@link #kept}
   * @throws dev.loopgauge.job.UsageException when none was named, or there is none of that name
   */
  public String backend(DataFolder data) throws SetupException {
    return device.backend(kept(data));
  }

  /**
   * The return of the cable straight back, for all paths of a chain file.
   *
   * @throws SetupException as {@link #kept}
   */
  public Optional<Integer> referenceReturn(DataFolder data, Chain chain) throws SetupException {
    return device.reference(kept(data), chain).map(ChannelPair::ret);
  }

  /**
   * All together, without a chain file.
   *
   * @throws SetupException as {@link #kept}
   */
  public Profile settings(DataFolder data) throws SetupException {
    return settings(kept(data), Optional.empty());
  }

  /** All together, over a profile, over the chain file of the path that is measured. */
  Profile settings(Optional<Profile> kept, Optional<ChosenPath> chosen) {
    return settings(kept, device.patching(kept, chosen), loopSeconds(chosen));
  }

  private static double loopSeconds(Optional<ChosenPath> chosen) {
    return chosen.map(ChosenPath::loopSeconds).orElse(0.0);
  }

  /** The same for any path of a chain file, plugged in where it is said. */
  Profile settings(Optional<Profile> kept, Patching patching, Chain chain) {
    return settings(kept, patching, longestLoopSeconds(chain));
  }

  /** How late the latest loop of a chain file is by its budget, in seconds. */
  static double longestLoopSeconds(Chain chain) {
    return chain.paths().values().stream()
        .mapToDouble(path -> ChainBudget.of(chain, path).loop().seconds())
        .max()
        .orElse(0);
  }

  private Profile settings(Optional<Profile> kept, Patching patching, double loopSeconds) {
    return new Profile(
        device.backend(kept),
        device.output(kept),
        device.input(kept),
        patching,
        device.rate(kept),
        device.bufferSamples(kept),
        stimulus.plan(kept, loopSeconds),
        kept.flatMap(Profile::calibration));
  }

  /**
   * The same with the send and the return on the ports of a program of the audio server, the first
   * ones unless others are named.
   */
  Profile settingsThrough(String client, Optional<Profile> kept, Optional<ChosenPath> chosen) {
    Patching base = kept.map(Profile::patching).orElse(Patching.single(1, 1));
    return new Profile(
        device.backend(kept),
        Optional.of(client),
        Optional.of(client),
        device.patchingOver(new KnownPatching(Optional.of(base.rig()), base.reference())),
        device.rate(kept),
        device.bufferSamples(kept),
        stimulus.plan(kept, loopSeconds(chosen)),
        Optional.empty());
  }
}
