package dev.loopgauge.plan;

import static dev.loopgauge.chain.Standing.CAUTION;
import static dev.loopgauge.chain.Standing.OVER;
import static dev.loopgauge.chain.Standing.WITHIN;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.loopgauge.chain.Standing;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class PictureRuleTest {
  /**
   * ITU-R BT.1359-1 (1998), recommends 2 to 5; EBU R37-2007, end of chain and each stage; ITU-T
   * J.100; ATSC IS-191 (2003). All as reported by others.
   */
  @ParameterizedTest
  @CsvSource({
    "ITU_BT1359, 90, 185",
    "ITU_BT1359_SOURCE, 25, 100",
    "ITU_BT1359_TRANSMITTER, 22.5, 30",
    "ITU_BT1359_SEGMENT, 2, 2",
    "EBU_R37, 40, 60",
    "EBU_R37_STAGE, 5, 15",
    "ITU_J100, 20, 40",
    "ATSC_IS191, 15, 45"
  })
  void publishedLimitsPassAndAnythingBeyondFails(PictureRule rule, double early, double late) {
    assertEquals(early, rule.earlyMs());
    assertEquals(late, rule.lateMs());
    Standing atLimit = rule == PictureRule.ITU_BT1359 ? CAUTION : WITHIN;
    assertEquals(atLimit, rule.standing(early));
    assertEquals(atLimit, rule.standing(-late));
    assertEquals(OVER, rule.standing(early + 0.001));
    assertEquals(OVER, rule.standing(-late - 0.001));
  }

  @ParameterizedTest
  @EnumSource
  void soundThatMeetsItsPictureIsWithinEveryRule(PictureRule rule) {
    assertEquals(WITHIN, rule.standing(0));
  }

  /** ITU-R BT.1359-1 (1998), considering g: detectable from +45 and -125 ms (reported). */
  @ParameterizedTest
  @CsvSource({"45, WITHIN", "45.001, CAUTION", "-125, WITHIN", "-125.001, CAUTION"})
  void whatIsAcceptableCanStillBeNoticed(double earlyMs, Standing standing) {
    assertEquals(standing, PictureRule.ITU_BT1359.standing(earlyMs));
  }

  /** Worked from the limits above (derived). */
  @ParameterizedTest
  @CsvSource({
    "46,  EBU_R37,    OVER",
    "46,  ATSC_IS191, OVER",
    "46,  ITU_BT1359, CAUTION",
    "-61, EBU_R37,    OVER",
    "-61, ATSC_IS191, OVER",
    "-61, ITU_BT1359, WITHIN"
  })
  void rulesDisagreeWhereTheirPurposesDo(double earlyMs, PictureRule rule, Standing standing) {
    assertEquals(standing, rule.standing(earlyMs));
  }

  @ParameterizedTest
  @CsvSource({"EBU_R37, ebu-r37", "ITU_BT1359, itu-bt1359", "ATSC_IS191, atsc-is191"})
  void labelsAreWrittenAsOnTheCommandLine(PictureRule rule, String label) {
    assertEquals(label, rule.label());
  }
}
