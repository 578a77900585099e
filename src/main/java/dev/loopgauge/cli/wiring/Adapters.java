package dev.loopgauge.cli.wiring;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.drivers.DriversBackend;
import dev.loopgauge.capture.jack.JackBackend;
import dev.loopgauge.capture.javasound.JavaSoundBackend;
import dev.loopgauge.capture.simulated.Pace;
import dev.loopgauge.capture.simulated.PathFault;
import dev.loopgauge.capture.simulated.Plugs;
import dev.loopgauge.capture.simulated.SimulatedBackend;
import dev.loopgauge.job.live.AudioSystem;
import dev.loopgauge.job.live.BuiltInRig;
import dev.loopgauge.job.live.ImitatedRig;
import java.util.List;
import java.util.function.Supplier;

/** Makes the audio adapters. */
public final class Adapters {
  private Adapters() {}

  /** Those of this computer. */
  public static AudioSystem ofThisComputer() {
    return of(new Real());
  }

  /** Other back ends for real sound, beside the built-in rig. */
  public static AudioSystem of(Supplier<List<AudioBackend>> real) {
    return of(real, Pace.REAL_TIME);
  }

  /** The same with the built-in rig's streams at another pace. */
  public static AudioSystem of(Supplier<List<AudioBackend>> real, Pace pace) {
    return new AudioSystem(real, new Rig(pace));
  }

  /** Classes of their own, since lambdas' would be made anew at each start. */
  private static final class Real implements Supplier<List<AudioBackend>> {
    @Override
    public List<AudioBackend> get() {
      return List.of(new JavaSoundBackend(), new JackBackend(), new DriversBackend());
    }
  }

  /** The built-in rig. */
  private static final class Rig implements BuiltInRig {
    private final Pace pace;

    Rig(Pace pace) {
      this.pace = pace;
    }

    @Override
    public AudioBackend imitating(ImitatedRig rig) {
      return Adapters.rig(rig, pace);
    }
  }

  private static AudioBackend rig(ImitatedRig rig, Pace pace) {
    List<PathFault> faults =
        rig.faults().stream()
            .map(fault -> PathFault.parse(fault, rig.chain().paths().keySet()))
            .toList();
    return new SimulatedBackend(rig.chain(), plugs(rig), faults, rig.seed(), pace);
  }

  private static Plugs plugs(ImitatedRig rig) {
    return rig.measured()
        .map(path -> Plugs.measuring(rig.chain(), path, rig.named()))
        .orElseGet(() -> Plugs.of(rig.chain()));
  }
}
