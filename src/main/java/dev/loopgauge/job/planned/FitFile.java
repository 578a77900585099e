package dev.loopgauge.job.planned;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Host;
import dev.loopgauge.job.ResultFile;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.plan.BlockFit;
import dev.loopgauge.plan.Load;
import dev.loopgauge.plan.Setting;
import dev.loopgauge.signal.SampleRate;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What a block series found out about a path of a chain.
 *
 * @param path the path
 * @param fit how its loop grows with the block size
 * @param loads what was noted of the computer
 */
public record FitFile(String path, BlockFit fit, Map<Setting, Load> loads) {
  /** What is asked of a series' document. */
  private record Kept(
      Optional<Split> split,
      Optional<Fit> fit,
      List<Predicted> predictions,
      List<Reading> readings) {}

  private record Split(Optional<String> path) {}

  private record Fit(Optional<BigDecimal> blocks, Optional<BigDecimal> fixedSamples) {}

  private record Predicted(Optional<BigDecimal> delaySamples, Optional<BigDecimal> delayMs) {}

  private record Reading(
      Optional<BigDecimal> blockSize,
      Optional<BigDecimal> cpuPercent,
      Optional<BigDecimal> dropouts) {}

  /**
   * Reads {@code PATH=FILE}, or {@code FILE} alone where the series names its path or one path only
   * enters the host.
   *
   * @throws UsageException when the file is not what {@code series} writes, or it is open which
   *     path it was measured on
   */
  public static FitFile read(Chain chain, String given) {
    int split = given.indexOf('=');
    ResultFile document = ResultFile.read(Path.of(given.substring(split + 1)), "series");
    Kept kept = document.as(Kept.class);
    String path =
        split >= 0
            ? given.substring(0, split)
            : kept.split().flatMap(Split::path).orElseGet(() -> onlyPath(chain, given));
    chain.path(path);
    Fit fit =
        kept.fit()
            .orElseThrow(() -> document.lacks("a 'fit'", "give what `loopgauge series` found"));
    SampleRate rate = rate(document, kept.predictions());
    try {
      double blocks = document.number(fit.blocks(), "blocks");
      double fixed = document.number(fit.fixedSamples(), "fixedSamples");
      BlockFit found = new BlockFit(rate, blocks, fixed);
      return new FitFile(path, found, loads(document, kept.readings(), rate));
    } catch (IllegalArgumentException e) {
      throw document.lacks("a fit that can be (" + e.getMessage() + ")", "measure it again");
    }
  }

  private static String onlyPath(Chain chain, String given) {
    List<String> paths =
        chain.paths().values().stream()
            .filter(path -> !Host.on(chain, path).inside().isEmpty())
            .map(path -> path.name())
            .toList();
    if (paths.size() != 1) {
      throw new UsageException(
          "expected --fit PATH=FILE, found no path before " + given,
          "say on which it was measured: " + String.join(", ", paths));
    }
    return paths.get(0);
  }

  /** From the largest prediction, which tells its delay both in samples and in ms. */
  private static SampleRate rate(ResultFile document, List<Predicted> predictions) {
    Predicted largest =
        predictions.stream()
            .max(Comparator.comparingDouble(part -> document.number(part.delayMs(), "delayMs")))
            .orElseThrow(
                () -> document.lacks("'predictions'", "give what `loopgauge series` found"));
    double samples = document.number(largest.delaySamples(), "delaySamples");
    long hertz = Math.round(samples * 1000 / document.number(largest.delayMs(), "delayMs"));
    try {
      return new SampleRate(Math.toIntExact(hertz));
    } catch (IllegalArgumentException | ArithmeticException e) {
      throw document.lacks("delays at a sample rate", "in samples and ms they don't agree");
    }
  }

  private static Map<Setting, Load> loads(
      ResultFile document, List<Reading> readings, SampleRate rate) {
    Map<Setting, Load> loads = new HashMap<>();
    for (Reading reading : readings) {
      OptionalDouble cpu = number(reading.cpuPercent());
      OptionalInt dropouts =
          reading
              .dropouts()
              .map(count -> OptionalInt.of(count.intValue()))
              .orElse(OptionalInt.empty());
      if (cpu.isPresent() || dropouts.isPresent()) {
        int blockSize = (int) document.number(reading.blockSize(), "blockSize");
        loads.merge(new Setting(blockSize, rate), new Load(cpu, dropouts), Load::worse);
      }
    }
    return loads;
  }

  private static OptionalDouble number(Optional<BigDecimal> figure) {
    return figure
        .map(BigDecimal::doubleValue)
        .map(OptionalDouble::of)
        .orElse(OptionalDouble.empty());
  }
}
