package dev.loopgauge.screen.desk;

import dev.loopgauge.capture.Availability;
import dev.loopgauge.job.live.AudioSystem;
import dev.loopgauge.job.live.BuiltInRig;
import dev.loopgauge.screen.state.Trouble;
import java.util.Optional;
import java.util.Timer;
import java.util.TimerTask;
import java.util.function.Supplier;

/** Looks every second whether there still is a way to the sound, while nothing uses it. */
final class SoundWatch implements AutoCloseable {
  private static final long SECOND_MS = 1_000;

  private final Timer clock = new Timer("loopgauge-screen-watch", true);

  /** Does something each second. */
  void everySecond(Runnable look) {
    TimerTask task =
        new TimerTask() {
          @Override
          public void run() {
            look.run();
          }
        };
    clock.schedule(task, SECOND_MS, SECOND_MS);
  }

  /** What is wrong with the sound; empty where nothing is. */
  static Supplier<Optional<Trouble>> of(AudioSystem audio, String backend) {
    return backend.equals(BuiltInRig.NAME) ? Optional::empty : () -> look(audio, backend);
  }

  private static Optional<Trouble> look(AudioSystem audio, String backend) {
    return audio.named(backend).look() instanceof Availability.Unusable gone
        ? Optional.of(new Trouble(gone.reason(), gone.hint()))
        : Optional.empty();
  }

  @Override
  public void close() {
    clock.cancel();
  }
}
