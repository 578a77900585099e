package dev.loopgauge.capture.drivers;

import xt.audio.XtDevice;

/**
 * The devices of a stream, which must stay open as long as it does.
 *
 * @param input records
 * @param output plays; the same where one device does both
 */
record XtPair(XtDevice input, XtDevice output) {
  void close() {
    input.close();
    if (output != input) {
      output.close();
    }
  }
}
