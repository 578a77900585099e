package dev.loopgauge.screen.desk;

import dev.loopgauge.capture.Availability;
import dev.loopgauge.job.live.AudioSystem;
import dev.loopgauge.job.live.BuiltInRig;
import dev.loopgauge.screen.state.Trouble;
import java.util.Optional;
import java.util.Timer;
import java.util.TimerTask;

/** Looks every second whether there still is a way to the sound, while nothing uses it. */
final class SoundWatch implements AutoCloseable {
  private static final long SECOND_MS = 1_000;

  private final AudioSystem audio;
  private final String backend;
  private final Timer clock = new Timer("loopgauge-screen-watch", true);

  /** Of a back end. */
  SoundWatch(AudioSystem audio, String backend) {
    this.audio = audio;
    this.backend = backend;
  }

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
  Optional<Trouble> look() {
    return !backend.equals(BuiltInRig.NAME)
            && audio.named(backend).look() instanceof Availability.Unusable gone
        ? Optional.of(new Trouble(gone.reason(), gone.hint()))
        : Optional.empty();
  }

  @Override
  public void close() {
    clock.cancel();
  }
}
