package dev.loopgauge.verify;

import dev.loopgauge.signal.Latency;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.stats.Median;
import dev.loopgauge.stats.RobustScatter;
import java.util.ArrayList;
import java.util.List;

/**
 * Works out how many blocks, plus a fixed part, a host adds, from its delay at several block sizes.
 *
 * <p>The line that the readings agree with best comes first. Those too far from it are set aside,
 * by the scale of P. J. Rousseeuw and A. M. Leroy, "Robust Regression and Outlier Detection", 1987,
 * chapter 5 (from memory); the others are fitted by weighted least squares.
 */
public final class BlockSeries {
  /** Expanded uncertainties cover two standard ones (JCGM 100:2008). */
  static final double COVERAGE = 2;

  /** A reading this many robust standard deviations off the line is set aside. */
  private static final double TOO_FAR = 3;

  /** The fewest readings that must agree before another one is called wrong. */
  private static final int FEWEST_AGREEING = 3;

  private final List<SeriesReading> readings;
  private final SampleRate rate;

  private BlockSeries(List<SeriesReading> readings) {
    this.readings = List.copyOf(readings);
    if (sizes(readings) < 2) {
      throw new IllegalArgumentException(
          "a series needs readings at two block sizes or more, not " + sizes(readings));
    }
    this.rate = readings.get(0).delay().rate();
    if (!readings.stream().allMatch(reading -> reading.delay().rate().equals(rate))) {
      throw new IllegalArgumentException("a series must be read at one sample rate");
    }
  }

  private static long sizes(List<SeriesReading> readings) {
    return readings.stream().mapToInt(SeriesReading::blockSize).distinct().count();
  }

  /**
   * Fits a series.
   *
   * @param readings at one rate, at two block sizes or more; a size may be read again
   * @throws IllegalArgumentException when there are fewer block sizes or several rates
   */
  public static SeriesFit fit(List<SeriesReading> readings) {
    return new BlockSeries(readings).fit();
  }

  private SeriesFit fit() {
    List<SeriesReading> agreeing = agreeing();
    BlockLine free = BlockLine.leastSquares(agreeing);
    double uncertainty = COVERAGE * slopeUncertainty(agreeing, free);
    boolean whole = SeriesFit.isWhole(free.blocks(), uncertainty);
    BlockLine line = whole ? BlockLine.through(agreeing, Math.rint(free.blocks())) : free;
    Latency fixed = new Latency(line.fixedSamples(), rate);
    List<SeriesFit.Fitted> fitted = new ArrayList<>();
    for (SeriesReading reading : readings) {
      Latency told = SeriesFit.at(reading.blockSize(), line.blocks(), fixed);
      fitted.add(new SeriesFit.Fitted(reading, told, !agreeing.contains(reading)));
    }
    return new SeriesFit(free.blocks(), uncertainty, line.blocks(), fixed, fitted);
  }

  /** The readings less those that are too far from the others, if enough are left to agree. */
  private List<SeriesReading> agreeing() {
    List<SeriesReading> near = near(BlockLine.consensus(readings, TOO_FAR));
    return agree(near) ? nearAll(near) : readings;
  }

  private List<SeriesReading> nearAll(List<SeriesReading> near) {
    List<SeriesReading> again = near(BlockLine.leastSquares(near));
    return agree(again) ? again : near;
  }

  private List<SeriesReading> near(BlockLine line) {
    double limit = TOO_FAR * scale(line);
    return readings.stream().filter(reading -> line.distance(reading) <= limit).toList();
  }

  private static boolean agree(List<SeriesReading> some) {
    return some.size() >= FEWEST_AGREEING && sizes(some) >= 2;
  }

  /** How many times larger than stated the uncertainties are, by the readings' own scatter. */
  private double scale(BlockLine line) {
    int spare = readings.size() - 2;
    double median = Median.of(readings.stream().mapToDouble(r -> line.distance(r)).toArray());
    return spare < 1 ? 1 : Math.max(1, (1 + 5.0 / spare) * RobustScatter.ofMedianMagnitude(median));
  }

  /** Of the slope; larger where the readings scatter by more than they say. */
  private static double slopeUncertainty(List<SeriesReading> agreeing, BlockLine line) {
    int spare = agreeing.size() - 2;
    double squares =
        agreeing.stream().mapToDouble(reading -> Math.pow(line.distance(reading), 2)).sum();
    double scatter = spare < 1 ? 1 : Math.max(1, Math.sqrt(squares / spare));
    return BlockLine.slopeUncertainty(agreeing) * scatter;
  }
}
