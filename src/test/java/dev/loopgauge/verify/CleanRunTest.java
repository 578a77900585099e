package dev.loopgauge.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CleanRunTest {
  private static Optional<CleanRun> of(String rows) throws SeriesFormatException {
    String csv = "block-size,delay-ms,cpu-percent,dropouts\n" + rows.replace("#", "\n");
    return CleanRun.of(SeriesParser.parse(csv, "rig.csv", Rigs.RATE));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "32,6,90,4#64,7,65,0#128,10,40,0 | 64",
        "32,6,60,0#64,7,71,0#128,10,40,0 | 128",
        "32,6,60,0#64,7,70,0#128,10,40,0 | 32",
        "32,6,60,0#64,7,50,1#128,10,40,0 | 128",
        "64,7,50,0#64,7,50,2#128,10,40,0 | 128",
        "32,6,,0#64,7,50,0#128,10,40,0 | 64",
        "32,6,,0#64,7,,0#128,10,, | 32",
        "32,6,,#64,7,60,#128,10,40, | 64"
      })
  void namesTheSmallestSizeThatRanCleanWithHeadroom(String rows, int blockSize)
      throws SeriesFormatException {
    assertEquals(
        Optional.of(blockSize), of(rows).orElseThrow().smallest().map(SeriesReading::blockSize));
  }

  @Test
  void namesNoneWhereTheLargestFailed() throws SeriesFormatException {
    assertTrue(of("32,6,60,0#64,7,50,3").orElseThrow().smallest().isEmpty());
  }

  @Test
  void saysNothingWhereNothingWasWatched() throws SeriesFormatException {
    assertTrue(of("32,6,,#64,7,,").isEmpty());
  }
}
