package dev.loopgauge.journal;

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

  /** The {@link Sha256} of the text. */
  public String digest() {
    return Sha256.of(text);
  }
}
