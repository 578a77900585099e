package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.BlockSizeServer;
import dev.loopgauge.capture.CaptureException;
import java.io.IOException;
import java.util.Optional;

/**
 * Sees whether an earlier command was killed before it set an audio server's block size back, and
 * offers to do it.
 */
record LeftBlocks(BlocksMark mark, Consent consent) {
  /** Looks, before a session is opened; silent where there is nothing to say. */
  static void check(Site site, AudioBackend backend, Consent consent)
      throws CaptureException, IOException {
    BlocksMark mark = BlocksMark.of(site);
    Optional<BlocksMark.Sizes> noted = mark.sizes();
    if (backend instanceof BlockSizeServer server && noted.isPresent()) {
      new LeftBlocks(mark, consent).check(server, noted.get());
    }
  }

  private void check(BlockSizeServer server, BlocksMark.Sizes noted)
      throws CaptureException, IOException {
    if (server.blockSize() != noted.set()) {
      mark.clear(); // Somebody has set it since.
      return;
    }
    consent.say(
        "The audio server is still at a block of %d samples: an earlier series was killed before it set it back to %d."
            .formatted(noted.set(), noted.before()));
    if (consent.wantsBack(noted.before())) {
      server.setBlockSize(noted.before());
      mark.clear();
    }
  }
}
