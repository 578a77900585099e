package dev.loopgauge.journal;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * A chain file as it was when the measurement was made.
 *
 * @param name the file's name as the user gave it
 * @param text all that stood in it
 */
public record ChainText(String name, String text) {
  /** SHA-256 over the text in UTF-8 (FIPS 180-4), 64 lower-case hexadecimal digits. */
  public String digest() {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(sha.digest(text.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
