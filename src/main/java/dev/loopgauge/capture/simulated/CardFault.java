package dev.loopgauge.capture.simulated;

import dev.loopgauge.capture.CaptureException;

/** A fault of the sound card itself: the take fails. */
enum CardFault implements Fault {
  /** The card is unplugged half-way through the take. */
  GONE {
    @Override
    CaptureException failure(int frames) {
      return gone(frames / 2 + " of " + frames + " frames");
    }
  },
  /** The card delivers fewer frames than asked for. */
  SHORT {
    @Override
    CaptureException failure(int frames) {
      return new CaptureException(
          CaptureException.Kind.SHORT,
          "the recording stopped early: " + frames * 9L / 10 + " of " + frames + " samples arrived",
          "close other programs that use the card, or take a larger buffer");
    }
  };

  /** The failure of a card that went away after so much. */
  static CaptureException gone(String after) {
    return new CaptureException(
        CaptureException.Kind.GONE,
        "the device rig went away after " + after,
        "check the card's cable and power, then measure again");
  }

  /** How a take of {@code frames} ends. */
  abstract CaptureException failure(int frames);
}
