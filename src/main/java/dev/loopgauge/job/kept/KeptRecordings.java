package dev.loopgauge.job.kept;

import dev.loopgauge.capture.FileTrouble;
import dev.loopgauge.journal.Entry;
import dev.loopgauge.journal.KeptCapture;
import dev.loopgauge.journal.Sha256;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The recordings beside a journal, compared with what its entries say of them. */
final class KeptRecordings {
  private final Path folder;
  private final List<String> damaged = new ArrayList<>();
  private int missing;

  /**
   * Recordings in a folder.
   *
   * @param folder where they are kept
   */
  KeptRecordings(Path folder) {
    this.folder = folder;
  }

  /** Reads the recording of an entry that has one. */
  void check(Entry entry) {
    entry.capture().ifPresent(capture -> check(entry, capture));
  }

  private void check(Entry entry, KeptCapture capture) {
    Optional<Path> file = file(entry);
    if (file.isEmpty()) {
      missing++;
      return;
    }
    wrong(file.get(), capture).ifPresent(damaged::add);
  }

  /** The file of an entry's recording, where it has one that is in the folder. */
  Optional<Path> file(Entry entry) {
    // Entries may come from elsewhere: no other name is followed.
    return entry
        .capture()
        .filter(capture -> isOwn(entry, capture))
        .map(capture -> folder.resolve(capture.file()))
        .filter(Files::exists);
  }

  /** What is wrong with a recording, in one sentence. */
  static Optional<String> wrong(Path file, KeptCapture capture) {
    String name = capture.file();
    try {
      return digest(file).equals(capture.digest())
          ? Optional.empty()
          : Optional.of("the recording " + name + " is not what was stored");
    } catch (IOException e) {
      return Optional.of("the recording " + name + " can't be read: " + FileTrouble.reason(e));
    }
  }

  private static boolean isOwn(Entry entry, KeptCapture capture) {
    return capture.file().equals(PackedRecording.name(entry.heading().id()))
        || (capture.digest().matches("[0-9a-f]{64}")
            && capture.file().equals(PackedRecording.name(capture.digest())));
  }

  private static String digest(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file);
        DigestInputStream digested = new DigestInputStream(in, Sha256.begin())) {
      digested.transferTo(OutputStream.nullOutputStream());
      return Sha256.end(digested.getMessageDigest());
    }
  }

  /** What is wrong, one sentence for each recording. */
  List<String> damaged() {
    return List.copyOf(damaged);
  }

  /** How many are not in the folder, as after an import or where only the journal was copied. */
  int missing() {
    return missing;
  }
}
