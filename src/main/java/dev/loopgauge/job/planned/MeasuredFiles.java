package dev.loopgauge.job.planned;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.job.Refusals;
import dev.loopgauge.job.ResultFile;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.plan.MeasuredLoop;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Measurements kept as documents. */
public final class MeasuredFiles {
  /** The outcomes with a number that settles how late a path is. */
  public static final Set<String> SETTLED = Set.of("measured", "within-budget", "outside-budget");

  private static final String HOW =
      "keep what `loopgauge measure --chain CHAIN --path NAME --json` prints";

  private MeasuredFiles() {}

  /** What is asked of a measurement's document. */
  private record Kept(
      Optional<String> outcome, Optional<Compared> comparison, Optional<Measured> measurement) {}

  private record Compared(Optional<String> path) {}

  private record Measured(
      Optional<BigDecimal> sampleRateHz,
      Optional<BigDecimal> delaySamples,
      Optional<BigDecimal> uncertaintySamples) {}

  /**
   * The loops as measured, by the name of the path.
   *
   * @throws UsageException when a file holds no settled measurement of a path, or two hold the same
   * @throws dev.loopgauge.chain.UnknownPathException when a path is not of the chain
   */
  public static Map<String, MeasuredLoop> loops(Chain chain, List<Path> files) {
    Map<String, MeasuredLoop> loops = new HashMap<>();
    for (Path file : files) {
      ResultFile document = ResultFile.read(file, "measure");
      Kept kept = document.as(Kept.class);
      String path =
          kept.comparison()
              .flatMap(Compared::path)
              .orElseThrow(() -> document.lacks("the name of a path", HOW));
      if (loops.put(chain.path(path).name(), loop(document, kept)) != null) {
        throw new UsageException(
            "two measurements of path " + path + ", the second in " + file,
            "give the later one only");
      }
    }
    return loops;
  }

  private static MeasuredLoop loop(ResultFile document, Kept kept) {
    if (!SETTLED.contains(kept.outcome().orElse(""))) {
      throw document.lacks(
          "a settled measurement", "its outcome is " + kept.outcome().orElse("missing"));
    }
    Measured measurement =
        kept.measurement().orElseThrow(() -> document.lacks("a 'measurement'", HOW));
    int hertz = (int) document.number(measurement.sampleRateHz(), "sampleRateHz");
    double samples = document.number(measurement.delaySamples(), "delaySamples");
    double uncertainty = measurement.uncertaintySamples().map(BigDecimal::doubleValue).orElse(0.0);
    return Refusals.asUsage(
        () ->
            new MeasuredLoop(
                new Latency(samples, new SampleRate(hertz)),
                uncertainty,
                Optional.empty(),
                Optional.empty()));
  }
}
