package dev.loopgauge.cli.wiring;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.jack.JackBackend;
import dev.loopgauge.capture.javasound.JavaSoundBackend;
import dev.loopgauge.capture.simulated.Fault;
import dev.loopgauge.capture.simulated.SimulatedBackend;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.job.live.AudioSystem;
import java.util.List;
import java.util.function.Supplier;

/** Makes the audio adapters. */
public final class Adapters {
  private Adapters() {}

  /** Those of this computer. */
  public static AudioSystem ofThisComputer() {
    return of(() -> List.of(new JavaSoundBackend(), new JackBackend()));
  }

  /** Other back ends for real sound, beside the built-in rig. */
  public static AudioSystem of(Supplier<List<AudioBackend>> real) {
    return new AudioSystem(real, Adapters::rig);
  }

  private static AudioBackend rig(Chain chain, ChainPath path, List<String> faults, long seed) {
    return new SimulatedBackend(chain, path, faults.stream().map(Fault::parse).toList(), seed);
  }
}
