package dev.loopgauge.capture.drivers;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.sun.jna.Memory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import xt.audio.Enums.XtSample;

class XtSamplesTest {
  /** Half a step of each kind, and what rounding to a float adds. */
  @ParameterizedTest
  @CsvSource({"FLOAT32, 1e-9, 4", "INT32, 1e-7, 4", "INT24, 1.2e-7, 3", "INT16, 1.6e-5, 2"})
  void whatIsWrittenIsReadAgain(XtSample kind, double step, int bytes) {
    float[] sound = {0, 0.5f, -0.5f, 0.123456f, -0.999f, -1};
    float[] read = new float[sound.length];
    XtSamples samples = XtSamples.of(kind, sound.length);
    Memory memory = new Memory((long) bytes * sound.length);
    samples.write(sound, memory, sound.length);
    samples.read(memory, read, sound.length);
    for (int i = 0; i < sound.length; i++) {
      assertEquals(sound[i], read[i], step, kind + " " + i);
    }
  }

  @ParameterizedTest
  @CsvSource({"INT32, 4", "INT24, 3", "INT16, 2"})
  void whatIsTooLoudIsClippedAndNotTurnedOver(XtSample kind, int bytes) {
    float[] sound = {1, 2, -2};
    float[] read = new float[sound.length];
    XtSamples samples = XtSamples.of(kind, sound.length);
    Memory memory = new Memory((long) bytes * sound.length);
    samples.write(sound, memory, sound.length);
    samples.read(memory, read, sound.length);
    assertEquals(1, read[0], 1e-4);
    assertEquals(1, read[1], 1e-4);
    assertEquals(-1, read[2], 1e-4);
  }
}
