package dev.loopgauge.job.live;

import dev.loopgauge.capture.WholeFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * A note in the data folder that an audio server's block size was changed, for as long as it isn't
 * set back. A program that is killed can't set it back; the next one finds the note.
 *
 * @param file where it is kept; it need not exist
 */
record BlocksMark(Path file) {
  /**
   * What was noted.
   *
   * @param before the block size to go back to, in samples
   * @param set the one that was set, in samples
   */
  record Sizes(int before, int set) {}

  /** The note of a site. */
  static BlocksMark of(Site site) {
    return new BlocksMark(site.data().path().resolve("server-block-size"));
  }

  /** Notes a change, before it is made. */
  void note(Sizes sizes) throws IOException {
    Files.createDirectories(file.getParent());
    byte[] text = (sizes.before() + " " + sizes.set() + "\n").getBytes(StandardCharsets.UTF_8);
    WholeFile.at(file).replace(out -> out.write(text));
  }

  /** Takes the note away. */
  void clear() throws IOException {
    Files.deleteIfExists(file);
  }

  /** What is noted; empty where nothing is, or nothing that can be read. */
  Optional<Sizes> sizes() throws IOException {
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    String text = Files.readString(file).strip();
    if (!text.matches("[0-9]{1,6} [0-9]{1,6}")) {
      return Optional.empty();
    }
    String[] sizes = text.split(" ", -1);
    return Optional.of(new Sizes(Integer.parseInt(sizes[0]), Integer.parseInt(sizes[1])));
  }
}
