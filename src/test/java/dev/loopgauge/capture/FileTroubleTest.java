package dev.loopgauge.capture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.io.EOFException;
import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class FileTroubleTest {
  @TempDir private Path folder;

  static Stream<Arguments> failures() {
    return Stream.of(
        arguments(new AccessDeniedException("f"), "permission denied"),
        arguments(new NoSuchFileException("f"), "no such file or folder"),
        arguments(new FileAlreadyExistsException("f"), "it exists already"),
        arguments(new NotDirectoryException("f"), "it is no folder"),
        arguments(new FileSystemLoopException("f"), "its links lead round in a circle"),
        arguments(new MalformedInputException(1), "it is no text in UTF-8"),
        arguments(new EOFException(), "it ends too early"),
        arguments(new FileSystemException("f", null, "Not a directory"), "Not a directory"),
        arguments(new FileSystemException("f"), "the system gives no reason"),
        arguments(new IOException("No space left on device"), "No space left on device"),
        arguments(new IOException(), "the system gives no reason"));
  }

  @ParameterizedTest
  @MethodSource("failures")
  void theReasonIsInWords(IOException failed, String reason) {
    assertEquals(reason, FileTrouble.reason(failed));
  }

  @Test
  void aRealFailureNamesItsFile() {
    Path missing = folder.resolve("missing");
    IOException failed = assertThrows(IOException.class, () -> Files.readString(missing));
    assertEquals(
        missing + " can't be read or written: no such file or folder", FileTrouble.told(failed));
  }

  @Test
  void aFailureWithoutNameIsThatOfSomeFile() {
    assertEquals(
        "a file can't be read or written: No space left on device",
        FileTrouble.told(new IOException("No space left on device")));
  }
}
