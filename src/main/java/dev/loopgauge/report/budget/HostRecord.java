package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.HostSettings;
import java.util.ArrayList;
import java.util.List;

/** A computer that runs apart from the rest of the rig, as documents hold it. */
public record HostRecord(String name, int blockSize, int sampleRateHz) {
  /** Of all hosts of a chain; what they don't state is as in the chain. */
  static List<HostRecord> all(Chain chain) {
    List<HostRecord> records = new ArrayList<>();
    for (HostSettings host : chain.hosts().values()) {
      records.add(of(chain, host));
    }
    return records;
  }

  private static HostRecord of(Chain chain, HostSettings host) {
    return new HostRecord(
        host.name(),
        host.blockSize().orElse(chain.blockSize()),
        host.rate().orElse(chain.rate()).hertz());
  }
}
