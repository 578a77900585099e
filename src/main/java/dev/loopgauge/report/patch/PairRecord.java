package dev.loopgauge.report.patch;

import dev.loopgauge.measure.ChannelPair;

/** A send and the return that shall hear it. */
public record PairRecord(int send, int ret) {
  static PairRecord of(ChannelPair pair) {
    return new PairRecord(pair.send(), pair.ret());
  }
}
