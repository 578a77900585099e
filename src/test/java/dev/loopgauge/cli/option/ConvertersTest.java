package dev.loopgauge.cli.option;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.StimulusKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine.TypeConversionException;

class ConvertersTest {
  @ParameterizedTest
  @ValueSource(strings = {"NaN", "Infinity", "1e999", "0x1p3", "1d", "0,5", "", " 1", "eleven"})
  void refusesWhatIsNoPlainNumber(String text) {
    assertThrows(TypeConversionException.class, () -> new Converters.Finite().convert(text));
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "-1", "1.5", "2147483648", "one"})
  void refusesWhatCountsNothing(String text) {
    assertThrows(TypeConversionException.class, () -> new Converters.Count().convert(text));
  }

  @Test
  void holdsEachNumberToItsRange() {
    assertEquals(-20.5, new Converters.Finite().convert("-20.5"));
    assertEquals(0, new Converters.Amount().convert("0"));
    assertThrows(TypeConversionException.class, () -> new Converters.Amount().convert("-0.1"));
    assertThrows(TypeConversionException.class, () -> new Converters.Positive().convert("0"));
    assertEquals(64, new Converters.Count().convert("64"));
  }

  @Test
  void readsRatesAndStimuli() {
    assertEquals(new SampleRate(44_100), new Converters.Rate().convert("44100"));
    assertThrows(TypeConversionException.class, () -> new Converters.Rate().convert("44.1"));
    assertThrows(TypeConversionException.class, () -> new Converters.Rate().convert("48"));
    assertEquals(StimulusKind.SWEEP, new Converters.Kind().convert("sweep"));
    assertThrows(TypeConversionException.class, () -> new Converters.Kind().convert("SWEEP"));
  }
}
