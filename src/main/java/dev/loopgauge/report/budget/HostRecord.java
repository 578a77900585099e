package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.HostSettings;

/** A computer that runs apart from the rest of the rig, as documents hold it. */
public record HostRecord(String name, int blockSize, int sampleRateHz) {
  /** Of a host; what it doesn't state is as in the chain. */
  static HostRecord of(Chain chain, HostSettings host) {
    return new HostRecord(
        host.name(),
        host.blockSize().orElse(chain.blockSize()),
        host.rate().orElse(chain.rate()).hertz());
  }
}
