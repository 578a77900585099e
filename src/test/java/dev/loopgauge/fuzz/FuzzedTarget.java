package dev.loopgauge.fuzz;

import java.nio.file.Files;

/** What the coverage-guided fuzzer calls; the property {@code loopgauge.fuzz} names the target. */
public final class FuzzedTarget {
  private static final Target TARGET = target();

  private FuzzedTarget() {}

  private static Target target() {
    try {
      return Targets.of(System.getProperty("loopgauge.fuzz"), Files.createTempDirectory("fuzz"));
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  /** Called once for each input. */
  public static void fuzzerTestOneInput(byte[] input) throws Exception {
    TARGET.check(input);
  }
}
