package dev.loopgauge.job.planned;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.Host;
import dev.loopgauge.job.ResultFile;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.plan.BlockFit;
import dev.loopgauge.plan.Load;
import dev.loopgauge.plan.Setting;
import dev.loopgauge.signal.SampleRate;
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
    String path =
        split >= 0
            ? given.substring(0, split)
            : named(document).orElseGet(() -> onlyPath(chain, given));
    chain.path(path);
    ResultFile fit =
        document
            .part("fit")
            .orElseThrow(() -> document.lacks("a 'fit'", "give what `loopgauge series` found"));
    SampleRate rate = rate(document);
    try {
      BlockFit found = new BlockFit(rate, fit.number("blocks"), fit.number("fixedSamples"));
      return new FitFile(path, found, loads(document, rate));
    } catch (IllegalArgumentException e) {
      throw document.lacks("a fit that can be (" + e.getMessage() + ")", "measure it again");
    }
  }

  private static Optional<String> named(ResultFile document) {
    return document.part("split").flatMap(split -> split.text("path"));
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
  private static SampleRate rate(ResultFile document) {
    ResultFile largest =
        document.parts("predictions").stream()
            .max(Comparator.comparingDouble(part -> part.number("delayMs")))
            .orElseThrow(
                () -> document.lacks("'predictions'", "give what `loopgauge series` found"));
    long hertz = Math.round(largest.number("delaySamples") * 1000 / largest.number("delayMs"));
    try {
      return new SampleRate(Math.toIntExact(hertz));
    } catch (IllegalArgumentException | ArithmeticException e) {
      throw document.lacks("delays at a sample rate", "in samples and ms they don't agree");
    }
  }

  private static Map<Setting, Load> loads(ResultFile document, SampleRate rate) {
    Map<Setting, Load> loads = new HashMap<>();
    for (ResultFile reading : document.parts("readings")) {
      OptionalDouble cpu =
          reading
              .optionalNumber("cpuPercent")
              .map(OptionalDouble::of)
              .orElse(OptionalDouble.empty());
      OptionalInt dropouts =
          reading
              .optionalNumber("dropouts")
              .map(count -> OptionalInt.of(count.intValue()))
              .orElse(OptionalInt.empty());
      if (cpu.isPresent() || dropouts.isPresent()) {
        int blockSize = (int) reading.number("blockSize");
        loads.merge(new Setting(blockSize, rate), new Load(cpu, dropouts), Load::worse);
      }
    }
    return loads;
  }
}
