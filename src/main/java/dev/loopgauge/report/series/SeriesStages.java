package dev.loopgauge.report.series;

import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.verify.SeriesFit;
import java.util.List;

/** A block series as the stages of a chain file. */
public final class SeriesStages {
  private static final int DECIMALS = 3;

  private SeriesStages() {}

  /** Whether there are such stages: none can have less than no delay. */
  public static boolean possible(SeriesFit fit) {
    return fit.toldBlocks() >= 0 && fixedSamples(fit) >= 0;
  }

  /** A fixed part that is zero but for the scatter of the readings is zero. */
  private static double fixedSamples(SeriesFit fit) {
    double fixed = fit.fixed().samples();
    return fixed < 0 && fixed >= -tolerance(fit) ? 0 : fixed;
  }

  private static double tolerance(SeriesFit fit) {
    return Math.ceil(fit.worstSamples() * 10) / 10;
  }

  /** The two stages, a line each, without indentation. */
  static List<String> lines(SeriesFit fit) {
    String tolerance =
        tolerance(fit) > 0 ? ", tolerance-samples: " + Numbers.brief(tolerance(fit), 1) : "";
    return List.of(
        "host-blocks: { blocks: " + Numbers.brief(fit.toldBlocks(), DECIMALS) + " }",
        "host-fixed: { samples: " + Numbers.brief(fixedSamples(fit), DECIMALS) + tolerance + " }");
  }

  /** A chain file with these two stages and one path through them. */
  public static String chainFile(SeriesFit fit, String name) {
    int blockSize = fit.readings().get(0).reading().blockSize();
    return "chain: \""
        + name.replaceAll("[\\p{Cntrl}\"\\\\]", "_")
        + "\"\nsample-rate: "
        + fit.fixed().rate().hertz()
        + "\nblock-size: "
        + blockSize
        + "\nstages:\n  "
        + String.join("\n  ", lines(fit))
        + "\npaths:\n  host: { listener: house, stages: [host-blocks, host-fixed] }\n";
  }
}
