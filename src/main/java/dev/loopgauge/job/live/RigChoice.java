package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.job.UsageException;
import java.util.List;
import java.util.Optional;

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
   * @throws UsageException when it isn't said what rig to imitate, a fault is none, or faults were
   *     asked for elsewhere: nobody shall take a real rig for a broken one
   */
  AudioBackend backend(AudioSystem audio, String name, Optional<ChosenPath> chosen) {
    if (name.equals(BuiltInRig.NAME)) {
      return rig(audio, imitated(chosen));
    }
    if (!faults.isEmpty()) {
      throw new UsageException(
          "--fault is for the simulated rig alone", "leave it out, or --backend simulated");
    }
    return audio.named(name);
  }

  /** The built-in rig with its host at another block size. */
  AudioBackend rig(AudioSystem audio, Optional<ChosenPath> chosen, int blockSize) {
    ChosenPath path = imitated(chosen);
    return rig(
        audio,
        new ChosenPath(path.chain().withBlockSize(blockSize), path.path(), path.allowSamples()));
  }

  private AudioBackend rig(AudioSystem audio, ChosenPath path) {
    return audio.rig().imitating(path.chain(), path.path(), faults, seed);
  }

  private static ChosenPath imitated(Optional<ChosenPath> chosen) {
    return chosen.orElseThrow(
        () ->
            new UsageException(
                "expected a chain file and --path, which say what rig to imitate",
                "`loopgauge demo` writes a chain file to try it with"));
  }
}
