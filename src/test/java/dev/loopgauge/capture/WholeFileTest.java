package dev.loopgauge.capture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WholeFileTest {
  @TempDir Path folder;

  private Path file() {
    return folder.resolve("out.csv");
  }

  private List<String> names() throws IOException {
    try (var files = Files.list(folder)) {
      return files.map(path -> path.getFileName().toString()).toList();
    }
  }

  private static WholeFile.Contents<IOException> text(String text) {
    return out -> out.write(text.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void theFileHoldsAllAndNothingElseIsLeft() throws Exception {
    WholeFile.at(file()).create(text("whole"));
    assertEquals("whole", Files.readString(file()));
    assertEquals(List.of("out.csv"), names());
  }

  @Test
  void contentsThatFailLeaveNothing() throws Exception {
    IOException broken = new IOException("broken");
    IOException told =
        assertThrows(
            IOException.class,
            () ->
                WholeFile.at(file())
                    .create(
                        out -> {
                          text("half").writeTo(out);
                          throw broken;
                        }));
    assertEquals(broken, told);
    assertEquals(List.of(), names());
    WholeFile.at(file()).create(text("whole"));
    assertEquals("whole", Files.readString(file()));
  }

  @Test
  void nothingIsSeenUnderTheNameBeforeItIsWhole() throws Exception {
    WholeFile.at(file())
        .create(
            out -> {
              text("half").writeTo(out);
              assertEquals(false, Files.exists(file()));
            });
  }

  @Test
  void whatIsThereIsNotOverwritten() throws Exception {
    Files.writeString(file(), "old");
    assertThrows(
        FileAlreadyExistsException.class, () -> WholeFile.at(file()).create(text("whole")));
    assertEquals("old", Files.readString(file()));
    Path dangling = Files.createSymbolicLink(folder.resolve("link"), folder.resolve("none"));
    assertThrows(
        FileAlreadyExistsException.class, () -> WholeFile.at(dangling).create(text("whole")));
  }

  @Test
  void aReplacementThatFailsLeavesWhatWasThere() throws Exception {
    Files.writeString(file(), "old");
    assertThrows(
        IllegalStateException.class,
        () ->
            WholeFile.at(file())
                .<RuntimeException>replace(
                    out -> {
                      throw new IllegalStateException("broken");
                    }));
    assertEquals("old", Files.readString(file()));
    WholeFile.at(file()).replace(text("new"));
    assertEquals("new", Files.readString(file()));
    assertEquals(List.of("out.csv"), names());
  }

  @Test
  void ownFilesAreReadByTheUserAlone() throws Exception {
    WholeFile.ownAt(file()).create(text("whole"));
    assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file())));
  }

  @Test
  void aMissingFolderIsSaid() {
    Path nowhere = folder.resolve("no/such/file");
    NoSuchFileException missing =
        assertThrows(NoSuchFileException.class, () -> WholeFile.at(nowhere).create(text("x")));
    assertEquals("no such file or folder", FileTrouble.reason(missing));
  }
}
