package dev.loopgauge.journal;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Digests by SHA-256 (FIPS 180-4), as 64 lower-case hexadecimal digits. */
public final class Sha256 {
  private Sha256() {}

  /** Begins a digest, to be fed with bytes. */
  public static MessageDigest begin() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  /** What a digest came to; it begins anew. */
  public static String end(MessageDigest digest) {
    return HexFormat.of().formatHex(digest.digest());
  }

  /** Of a text in UTF-8. */
  public static String of(String text) {
    MessageDigest digest = begin();
    digest.update(text.getBytes(StandardCharsets.UTF_8));
    return end(digest);
  }
}
