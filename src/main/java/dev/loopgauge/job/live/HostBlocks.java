package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.BlockSizeServer;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.cli.option.LiveOptions;
import dev.loopgauge.cli.option.RigOptions;
import dev.loopgauge.job.ChosenPath;
import java.io.IOException;
import java.util.Optional;

/** Has the host that is measured run at one block size after another. */
public interface HostBlocks extends AutoCloseable {
  /**
   * Sets the block size.
   *
   * @return the back end to measure with from now on
   * @throws CaptureException when that fails
   */
  AudioBackend set(int samples) throws CaptureException, IOException;

  /** What will be done to the host, one sentence; empty where nobody else is disturbed. */
  default Optional<String> warning() {
    return Optional.empty();
  }

  /**
   * Sets back what was set.
   *
   * @throws CaptureException when that fails
   */
  @Override
  default void close() throws CaptureException {}

  /**
   * The host of a back end: the built-in rig is built anew, an audio server is set, and elsewhere a
   * person is asked.
   */
  static HostBlocks of(
      AudioBackend backend, RigOptions rig, Optional<ChosenPath> chosen, Consent consent)
      throws CaptureException {
    if (backend.name().equals(LiveOptions.SIMULATED)) {
      return new RigBlocks(rig, chosen);
    }
    return backend instanceof BlockSizeServer server
        ? new ServerBlocks(server)
        : new AskedBlocks(backend, consent);
  }

  /**
   * The built-in rig.
   *
   * @param rig makes it
   * @param chosen what it imitates
   */
  record RigBlocks(RigOptions rig, Optional<ChosenPath> chosen) implements HostBlocks {
    @Override
    public AudioBackend set(int samples) {
      return rig.rig(chosen, samples);
    }
  }

  /**
   * A host that only a person can set.
   *
   * @param backend measures it
   * @param consent asks for it
   */
  record AskedBlocks(AudioBackend backend, Consent consent) implements HostBlocks {
    @Override
    public AudioBackend set(int samples) throws IOException {
      consent.waitFor("Set the host to a block of " + samples + " samples and let it run.");
      return backend;
    }
  }
}
