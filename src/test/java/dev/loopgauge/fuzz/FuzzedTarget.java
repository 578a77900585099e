package dev.loopgauge.fuzz;

import java.nio.file.Files;

/** What the coverage-guided fuzzer calls; the property {@code loopgauge.fuzz} names the target. */
public final class FuzzedTarget {
  private FuzzedTarget() {}

  private static final class Holder {
    private static final Target TARGET = target();

    private static Target target() {
      try {
        return Targets.of(System.getProperty("loopgauge.fuzz"), Files.createTempDirectory("fuzz"));
      } catch (Exception e) {
        throw new IllegalStateException(e);
      }
    }
  }

  /** Called once, before inputs are timed: makes the target, and loads what a whole input needs. */
  public static void fuzzerInitialize() throws Exception {
    for (byte[] whole : Holder.TARGET.seeds()) {
      Holder.TARGET.check(whole);
    }
  }

  /** Called once for each input. */
  public static void fuzzerTestOneInput(byte[] input) throws Exception {
    Holder.TARGET.check(input);
  }
}
