package dev.loopgauge.capture;

import java.io.EOFException;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.util.Optional;

/** Why a file can't be read or written, in words rather than by the class of an exception. */
public final class FileTrouble {
  private FileTrouble() {}

  /** The reason, part of a sentence. */
  public static String reason(IOException failed) {
    if (failed instanceof AccessDeniedException) {
      return "permission denied";
    }
    if (failed instanceof NoSuchFileException) {
      return "no such file or folder";
    }
    if (failed instanceof FileAlreadyExistsException) {
      return "it exists already";
    }
    if (failed instanceof NotDirectoryException) {
      return "it is no folder";
    }
    if (failed instanceof FileSystemLoopException) {
      return "its links lead round in a circle";
    }
    if (failed instanceof CharacterCodingException) {
      return "it is no text in UTF-8";
    }
    if (failed instanceof EOFException) {
      return "it ends too early";
    }
    return said(failed).orElse("the system gives no reason");
  }

  /** What could not be read or written, where the system says so, and why: one sentence. */
  public static String told(IOException failed) {
    String file =
        failed instanceof FileSystemException named && named.getFile() != null
            ? named.getFile()
            : "a file";
    return file + " can't be read or written: " + reason(failed);
  }

  /**
   * What the system says; the message of its exceptions is the file's name where it says nothing.
   */
  private static Optional<String> said(IOException failed) {
    return Optional.ofNullable(
        failed instanceof FileSystemException named ? named.getReason() : failed.getMessage());
  }
}
