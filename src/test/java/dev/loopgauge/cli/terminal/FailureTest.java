package dev.loopgauge.cli.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.chain.ChangeFormatException;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.journal.JournalException;
import dev.loopgauge.setup.SetupException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

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

  @Test
  void whatNobodyForesawNamesNoClass() {
    Failure failure = Failure.of(new NumberFormatException("Character N is neither a digit"));
    assertEquals("something went wrong that should not", failure.text());
    assertTrue(failure.hint().contains("--debug"), failure.hint());
  }

  @Test
  void aFileThatIsMissingIsNamedWithoutAnyClass() {
    Failure failure = Failure.of(new NoSuchFileException("notes.txt"));
    assertEquals("notes.txt can't be read or written: no such file or folder", failure.text());
  }

  @Test
  void aNameThatNoFileCanHaveIsToldWithoutAnyClass() {
    Failure failure = Failure.of(new InvalidPathException("x", "Nul character not allowed"));
    assertEquals("unusable-file", failure.code());
    assertEquals(
        "expected the name of a file, found 'x': Nul character not allowed", failure.text());
  }

  @Test
  void anUncheckedFailureOfFileIsToldAsTheFailureItself() {
    IOException full = new IOException("No space left on device");
    assertEquals(Failure.of(full), Failure.of(new UncheckedIOException(full)));
  }

  static Stream<Arguments> hinted() {
    return Stream.of(
        arguments(new UsageException("t", "h"), ExitCode.USAGE, "wrong-arguments"),
        arguments(new SetupException("t", "h"), ExitCode.USAGE, "unusable-setup"),
        arguments(new ChangeFormatException("t", "h"), ExitCode.USAGE, "wrong-arguments"),
        arguments(new JournalException("t", "h"), ExitCode.JOURNAL, "journal"),
        arguments(
            new CaptureException(Kind.TOO_FEW_CHANNELS, "t", "h"),
            ExitCode.AUDIO,
            "too-few-channels"));
  }

  @ParameterizedTest
  @MethodSource("hinted")
  void whatSaysWhatToTryIsToldAsItSays(Exception thrown, int exitCode, String code) {
    assertEquals(new Failure(exitCode, code, "t", "h"), Failure.of(thrown));
  }
}
