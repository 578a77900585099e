package dev.loopgauge.report.form;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A measured delay goes down to its uncertainty's second digit, and to four decimals at least. */
class WrittenTest {
  @ParameterizedTest
  @CsvSource({
    "723.018449999, 0.036, 723.0184, 0.036",
    "723.018449999, 0.0361, 723.0184, 0.0361",
    "723.018449999, 0.03611, 723.0184, 0.0362",
    "723.018449999, 12.3456, 723.0184, 12.3456",
    "723.018449999, 0.0009123, 723.01845, 0.00092",
    "723.018449999, 0.00009123, 723.01845, 0.000092",
    "723.018449999, 0.00001, 723.01845, 0.00001",
    "64, 0.000000001, 64, 0.000000001",
  })
  void samples(double samples, double uncertainty, String written, String uncertain) {
    assertEquals(written, Written.samples(samples, uncertainty).toPlainString());
    assertEquals(uncertain, Written.uncertainSamples(uncertainty).toPlainString());
  }

  @ParameterizedTest
  @CsvSource({
    "15.06288331234, 0.00075, 15.062883, 0.00075",
    "15.06288331234, 0.00000075, 15.06288331, 0.00000075",
    "15.06288331234, 0.000000751, 15.06288331, 0.00000076",
  })
  void milliseconds(double ms, double uncertainty, String written, String uncertain) {
    assertEquals(written, Written.ms(ms, uncertainty).toPlainString());
    assertEquals(uncertain, Written.uncertainMs(uncertainty).toPlainString());
  }
}
