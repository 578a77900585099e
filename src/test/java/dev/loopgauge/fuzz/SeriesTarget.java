package dev.loopgauge.fuzz;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.verify.SeriesParser;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Tables of readings at several block sizes. */
record SeriesTarget() implements Target {
  private static final String TABLE =
      """
      block-size,delay-ms,uncertainty-samples,cpu-percent,dropouts
      32,5.9,0.1,88,3
      64,7.2,0.1,61,0
      128,9.9,0.1,44,0
      2048,89.9,0.1,20,0
      """;

  @Override
  public List<byte[]> seeds() {
    return List.of(TABLE.getBytes(StandardCharsets.UTF_8));
  }

  @Override
  public void check(byte[] input) throws Exception {
    String text = new String(input, StandardCharsets.UTF_8);
    Refusal.orRead(() -> SeriesParser.parse(text, "readings.csv", new SampleRate(48_000)));
  }
}
