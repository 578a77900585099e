package dev.loopgauge.cli.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.job.UsageException;
import java.io.IOException;
import org.junit.jupiter.api.Test;

class FailureTest {
  @Test
  void unusableArgumentsExitWithTwo() {
    Failure failure = Failure.of(new UsageException("no file x.wav", "check the name"));
    assertEquals(
        new Failure(ExitCode.USAGE, "wrong-arguments", "no file x.wav", "check the name"), failure);
  }

  @Test
  void aFailedSoundDeviceExitsWithFour() {
    Failure failure =
        Failure.of(new CaptureException(Kind.NO_SUCH_DEVICE, "no card", "plug it in"));
    assertEquals(new Failure(ExitCode.AUDIO, "no-such-device", "no card", "plug it in"), failure);
  }

  @Test
  void feedbackIsNoTrustworthyMeasurement() {
    Failure failure = Failure.of(new CaptureException(Kind.FEEDBACK, "it rises", "mute"));
    assertEquals(ExitCode.NOT_TRUSTWORTHY, failure.exitCode());
    assertEquals("feedback", failure.code());
  }

  @Test
  void whatNobodyForesawIsOneLineAndExitsWithTwo() {
    Failure failure = Failure.of(new IllegalStateException("first\n  second"));
    assertEquals(ExitCode.USAGE, failure.exitCode());
    assertEquals("unexpected", failure.code());
    assertEquals(1, failure.text().lines().count());
  }

  @Test
  void aFullDiskIsNoFaultOfTheProgram() {
    Failure failure = Failure.of(new IOException("No space left on device"));
    assertEquals("unusable-file", failure.code());
    assertTrue(failure.text().contains("No space left on device"), failure.text());
  }

  @Test
  void tooLittleMemorySaysWhatHelps() {
    assertEquals("out-of-memory", Failure.of(new OutOfMemoryError()).code());
  }
}
