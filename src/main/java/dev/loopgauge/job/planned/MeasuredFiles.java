package dev.loopgauge.job.planned;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.job.Refusals;
import dev.loopgauge.job.ResultFile;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Measurements kept as documents. */
public final class MeasuredFiles {
  /** The outcomes with a number that settles how late a path is. */
  public static final Set<String> SETTLED = Set.of("measured", "within-budget", "outside-budget");

  private static final String HOW =
      "keep what `loopgauge measure --chain CHAIN --path NAME --json` prints";

  private MeasuredFiles() {}

  /**
   * The measured delays of loops, by the name of the path.
   *
   * @throws UsageException when a file holds no settled measurement of a path, or two hold the same
   * @throws dev.loopgauge.chain.UnknownPathException when a path is not of the chain
   */
  public static Map<String, Latency> loops(Chain chain, List<Path> files) {
    Map<String, Latency> loops = new HashMap<>();
    for (Path file : files) {
      ResultFile document = ResultFile.read(file, "measure");
      String path =
          document
              .part("comparison")
              .flatMap(comparison -> comparison.text("path"))
              .orElseThrow(() -> document.lacks("the name of a path", HOW));
      if (loops.put(chain.path(path).name(), loop(document)) != null) {
        throw new UsageException(
            "two measurements of path " + path + ", the second in " + file,
            "give the later one only");
      }
    }
    return loops;
  }

  private static Latency loop(ResultFile document) {
    if (!SETTLED.contains(document.text("outcome").orElse(""))) {
      throw document.lacks(
          "a settled measurement", "its outcome is " + document.text("outcome").orElse("missing"));
    }
    ResultFile measurement =
        document.part("measurement").orElseThrow(() -> document.lacks("a 'measurement'", HOW));
    int hertz = (int) measurement.number("sampleRateHz");
    double samples = measurement.number("delaySamples");
    return Refusals.asUsage(() -> new Latency(samples, new SampleRate(hertz)));
  }
}
