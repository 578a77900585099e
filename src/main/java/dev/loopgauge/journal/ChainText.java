package dev.loopgauge.journal;

import java.nio.charset.StandardCharsets;

/**
 * A chain file as it was when the measurement was made.
 *
 * @param name the file's name as the user gave it
 * @param text all that stood in it
 */
public record ChainText(String name, String text) {
  /** The name without folders, as versions before 3 of the journal kept some. */
  public ChainText withoutFolder() {
    return new ChainText(
        name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1), text);
  }

  /**
   * The {@link Sha256} of the text. Half a surrogate pair, which no file holds, has no bytes of its
   * own in UTF-8: a text with one is digested as it is stored.
   */
  public String digest() {
    boolean whole = StandardCharsets.UTF_8.newEncoder().canEncode(text);
    return whole ? olderDigest() : Sha256.of(StoredText.stored(text));
  }

  /** The same as it was, when all halves of surrogate pairs were taken for one. */
  String olderDigest() {
    return Sha256.of(text);
  }
}
