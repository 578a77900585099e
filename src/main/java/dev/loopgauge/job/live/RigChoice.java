package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Patch;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.measure.ChannelPair;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What is wrong with the built-in rig.
 *
 * @param faults as {@code --fault} takes them
 * @param seed of its noise
 */
public record RigChoice(List<String> faults, long seed) {
  /** A rig as its chain file says. */
  public static final RigChoice FLAWLESS = new RigChoice(List.of(), 1);

  /** Copies the faults. */
  public RigChoice {
    faults = List.copyOf(faults);
  }

  /**
   * The back end of a name: the built-in rig, or one of those that reach real sound.
   *
   * @param named where the path is plugged in where its chain file doesn't say
   * @throws UsageException when it isn't said what rig to imitate, a fault is none, or faults were
   *     asked for elsewhere: nobody shall take a real rig for a broken one
   */
  AudioBackend backend(
      AudioSystem audio, String name, Optional<ChosenPath> chosen, Optional<ChannelPair> named) {
    return name.equals(BuiltInRig.NAME) ? rig(audio, imitated(chosen), named) : real(audio, name);
  }

  /**
   * The same for all paths of a chain file at once; a fault that names no path is on each.
   *
   * @throws UsageException when a fault is none, or faults were asked for elsewhere
   */
  AudioBackend backend(AudioSystem audio, String name, Chain chain) {
    return name.equals(BuiltInRig.NAME)
        ? audio
            .rig()
            .imitating(new ImitatedRig(chain, Optional.empty(), Optional.empty(), faults, seed))
        : real(audio, name);
  }

  private AudioBackend real(AudioSystem audio, String name) {
    if (!faults.isEmpty()) {
      throw new UsageException(
          "--fault is for the simulated rig alone", "leave it out, or --backend simulated");
    }
    return audio.named(name);
  }

  /** The built-in rig with its host at another block size. */
  AudioBackend rig(
      AudioSystem audio, Optional<ChosenPath> chosen, Optional<ChannelPair> named, int blockSize) {
    ChosenPath path = imitated(chosen);
    Chain other = path.chain().withBlockSize(blockSize);
    return rig(audio, new ChosenPath(other, path.path(), path.allowSamples()), named);
  }

  private AudioBackend rig(AudioSystem audio, ChosenPath path, Optional<ChannelPair> named) {
    Optional<Patch> plug =
        named.map(pair -> new Patch(pair.send(), pair.ret(), OptionalInt.empty()));
    return audio
        .rig()
        .imitating(new ImitatedRig(path.chain(), Optional.of(path.path()), plug, faults, seed));
  }

  private static ChosenPath imitated(Optional<ChosenPath> chosen) {
    return chosen.orElseThrow(
        () ->
            new UsageException(
                "expected a chain file and --path, which say what rig to imitate",
                "`loopgauge demo` writes a chain file to try it with"));
  }
}
