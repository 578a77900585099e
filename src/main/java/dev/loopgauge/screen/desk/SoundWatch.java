package dev.loopgauge.screen.desk;

import dev.loopgauge.capture.Availability;
import dev.loopgauge.job.live.AudioSystem;
import dev.loopgauge.job.live.BuiltInRig;
import dev.loopgauge.screen.state.ScreenState.Trouble;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/** Looks every second whether there still is a way to the sound, while nothing uses it. */
final class SoundWatch implements AutoCloseable {
  private final ScheduledExecutorService clock =
      Executors.newSingleThreadScheduledExecutor(
          work -> {
            Thread thread = new Thread(work, "loopgauge-screen-watch");
            thread.setDaemon(true);
            return thread;
          });

  /** Does something each second. */
  void everySecond(Runnable look) {
    clock.scheduleWithFixedDelay(look, 1, 1, TimeUnit.SECONDS);
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
    clock.shutdownNow();
  }
}
