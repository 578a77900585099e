package dev.loopgauge.screen;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.Availability;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.FlowLimit;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.Take;
import dev.loopgauge.cli.wiring.Adapters;
import dev.loopgauge.job.ChainFile;
import dev.loopgauge.job.live.AudioSystem;
import dev.loopgauge.job.live.ImitatedRig;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;

/** The built-in rig under the name of a back end that makes sound, and can be made to go on. */
final class SoundingRig implements AudioBackend {
  final AtomicInteger played = new AtomicInteger();
  final CountDownLatch playing = new CountDownLatch(1);
  private final AudioBackend rig;
  private final boolean endless;
  private volatile boolean gone;

  /**
   * The rig of a chain file whose paths say their patch.
   *
   * @param endless whether a take never ends by itself
   */
  SoundingRig(Path chain, boolean endless) throws Exception {
    rig =
        Adapters.ofThisComputer()
            .rig()
            .imitating(
                new ImitatedRig(
                    ChainFile.read(chain), Optional.empty(), Optional.empty(), List.of(), 1));
    this.endless = endless;
  }

  AudioSystem system() {
    return Adapters.of(() -> List.of(this));
  }

  /** The device is pulled out. */
  void goes() {
    gone = true;
  }

  @Override
  public String name() {
    return "java-sound";
  }

  @Override
  public Availability look() {
    return gone
        ? new Availability.Unusable("the card is gone", "plug it in again")
        : new Availability.Usable(List.of(new AudioDevice("card", 3, 3, List.of())));
  }

  @Override
  public AudioSession open(SessionRequest request) throws CaptureException {
    AudioSession session = rig.open(request);
    return new AudioSession() {
      @Override
      public SessionInfo info() {
        return session.info();
      }

      @Override
      public Capture capture(Take take) throws CaptureException {
        played.incrementAndGet();
        playing.countDown();
        while (endless) {
          FlowLimit.pause();
        }
        return session.capture(take);
      }

      @Override
      public void close() {
        session.close();
      }
    };
  }
}
