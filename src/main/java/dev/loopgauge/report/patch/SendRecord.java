package dev.loopgauge.report.patch;

import dev.loopgauge.measure.PatchMap;
import dev.loopgauge.report.form.Numbers;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** A send and where it is heard. */
public record SendRecord(int send, List<HeardRecord> heard) {
  private static final int LEVEL_DECIMALS = 1;
  private static final int SAMPLE_DECIMALS = 2;
  private static final int MS_DECIMALS = 3;
  private static final int TEXT_MS_DECIMALS = 2;

  /** A return that hears a send. */
  public record HeardRecord(
      int ret,
      Optional<BigDecimal> levelDb,
      Optional<BigDecimal> delaySamples,
      Optional<BigDecimal> delayMs) {
    private static HeardRecord of(PatchMap.Heard heard) {
      return new HeardRecord(
          heard.ret(),
          Optional.of(Numbers.rounded(heard.levelDb(), LEVEL_DECIMALS)),
          Optional.of(Numbers.rounded(heard.delay().samples(), SAMPLE_DECIMALS)),
          Optional.of(Numbers.rounded(heard.delay().ms(), MS_DECIMALS)));
    }

    /** How loud, with its unit. */
    String level() {
      return plain(levelDb, LEVEL_DECIMALS) + " dB";
    }

    /** Where, how loud and how late. */
    String told() {
      return "return "
          + ret
          + ", "
          + level()
          + ", "
          + plain(delayMs, TEXT_MS_DECIMALS)
          + " ms late";
    }
  }

  static SendRecord of(PatchMap map, int send) {
    return new SendRecord(send, map.hearing(send).stream().map(HeardRecord::of).toList());
  }

  private static String plain(Optional<BigDecimal> number, int decimals) {
    return number.map(known -> Numbers.plain(known.doubleValue(), decimals)).orElse("?");
  }
}
