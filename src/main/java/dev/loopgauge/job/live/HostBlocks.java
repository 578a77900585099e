package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.BlockSizeServer;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.measure.ChannelPair;
import java.io.IOException;
import java.util.Optional;

/** Has the host that is measured run at one block size after another. */
interface HostBlocks extends AutoCloseable {
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
  static HostBlocks of(LiveRun run) throws CaptureException, IOException {
    if (run.backend().name().equals(BuiltInRig.NAME)) {
      return new RigBlocks(run);
    }
    return run.backend() instanceof BlockSizeServer server
        ? new ServerBlocks(server, BlocksMark.of(run.site()))
        : new AskedBlocks(run.backend(), run.consent());
  }

  /** Whether the host of a back end is set by the program, so that nobody is asked for it. */
  static boolean isSet(AudioBackend backend) {
    return backend.name().equals(BuiltInRig.NAME) || backend instanceof BlockSizeServer;
  }

  /**
   * The built-in rig.
   *
   * @param run what it imitates
   */
  record RigBlocks(LiveRun run) implements HostBlocks {
    @Override
    public AudioBackend set(int samples) {
      Optional<ChannelPair> plug = run.request().live().device().plug(run.kept(), run.chosen());
      return run.request().rig().rig(run.site().audio(), run.chosen(), plug, samples);
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
