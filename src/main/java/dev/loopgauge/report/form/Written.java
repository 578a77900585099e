package dev.loopgauge.report.form;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Figures as documents write them. Samples carry at least four decimals, milliseconds six, which
 * are worth the same: a digit beyond what most captures resolve, so that sums stay exact, and no
 * noise of arithmetic. A measured delay carries more where its uncertainty's second digit stands
 * further right.
 */
public final class Written {
  /** The fewest decimals of a sample. */
  private static final int SAMPLE_DECIMALS = 4;

  /** The fewest decimals of a millisecond. */
  private static final int MS_DECIMALS = 6;

  private static final int HZ_DECIMALS = 2;
  private static final int DB_DECIMALS = 2;

  private Written() {}

  /** Samples that nobody measured. */
  public static BigDecimal samples(double samples) {
    return Numbers.rounded(samples, SAMPLE_DECIMALS);
  }

  /** Milliseconds that nobody measured. */
  public static BigDecimal ms(double ms) {
    return Numbers.rounded(ms, MS_DECIMALS);
  }

  /** Measured samples, down to the second digit of their uncertainty. */
  public static BigDecimal samples(double samples, double uncertainty) {
    return Numbers.rounded(samples, decimals(uncertainty, SAMPLE_DECIMALS));
  }

  /** Measured milliseconds, down to the second digit of their uncertainty. */
  public static BigDecimal ms(double ms, double uncertainty) {
    return Numbers.rounded(ms, decimals(uncertainty, MS_DECIMALS));
  }

  /** An uncertainty in samples, rounded up at its second digit or beyond. */
  public static BigDecimal uncertainSamples(double uncertainty) {
    return Numbers.roundedUp(uncertainty, decimals(uncertainty, SAMPLE_DECIMALS));
  }

  /** An uncertainty in milliseconds, rounded up at its second digit or beyond. */
  public static BigDecimal uncertainMs(double uncertainty) {
    return Numbers.roundedUp(uncertainty, decimals(uncertainty, MS_DECIMALS));
  }

  private static int decimals(double uncertainty, int least) {
    return uncertainty > 0 ? Math.max(least, Numbers.secondDigit(uncertainty)) : least;
  }

  /** A level within what arithmetic can hold apart. */
  public static BigDecimal db(double db) {
    return Numbers.rounded(Numbers.tellableDb(db), DB_DECIMALS);
  }

  /** The same where there is one. */
  public static Optional<BigDecimal> db(OptionalDouble db) {
    return db.isPresent() ? Optional.of(db(db.getAsDouble())) : Optional.empty();
  }

  /** The uncertainty of a level, rounded up. */
  public static BigDecimal uncertainDb(double db) {
    return Numbers.roundedUp(db, DB_DECIMALS);
  }

  /** A frequency; empty where there is none. */
  public static Optional<BigDecimal> hz(OptionalDouble hertz) {
    return hertz.isPresent()
        ? Optional.of(Numbers.rounded(hertz.getAsDouble(), HZ_DECIMALS))
        : Optional.empty();
  }

  /** A limit or another time in milliseconds; empty where there is none. */
  public static Optional<BigDecimal> ms(OptionalDouble ms) {
    return ms.isPresent() ? Optional.of(ms(ms.getAsDouble())) : Optional.empty();
  }

  /** The same as an Optional of objects. */
  public static Optional<Double> boxed(OptionalDouble number) {
    return number.isPresent() ? Optional.of(number.getAsDouble()) : Optional.empty();
  }
}
