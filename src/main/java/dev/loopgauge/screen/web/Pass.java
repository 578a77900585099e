package dev.loopgauge.screen.web;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Locale;
import java.util.Optional;

/**
 * Who may do what, by a random token: the one that the computer's own browser has, or the one that
 * was handed to others.
 */
final class Pass {
  private static final int TOKEN_BYTES = 18;

  /** What a browser may do. */
  enum May {
    /** Look, and stop what plays: that is never wrong. */
    LOOK,
    /** Begin a measurement too, to which somebody at the computer agrees. */
    PLAY,
    /** Everything: whoever has it sits at the computer. */
    AGREE;

    /** The name on the page. */
    String label() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  private final String own = token();
  private final String shared = token();
  private final Optional<May> others;

  private Pass(Optional<May> others) {
    this.others = others;
  }

  /** Tokens for the computer alone, or for others as well. */
  static Pass of(Sharing sharing) {
    return new Pass(
        sharing == Sharing.NOBODY
            ? Optional.empty()
            : Optional.of(sharing == Sharing.CONTROL ? May.PLAY : May.LOOK));
  }

  private static String token() {
    byte[] random = new byte[TOKEN_BYTES];
    new SecureRandom().nextBytes(random);
    return Base64.getUrlEncoder().withoutPadding().encodeToString(random);
  }

  /** The token for the computer's own browser. */
  String own() {
    return own;
  }

  /** The token for others. */
  String shared() {
    return shared;
  }

  /** What a token allows; empty where it is none of ours. */
  Optional<May> of(String token) {
    if (isSame(token, own)) {
      return Optional.of(May.AGREE);
    }
    return others.filter(may -> isSame(token, shared));
  }

  /** Takes as long for a near miss as for a far one. */
  private static boolean isSame(String given, String token) {
    return MessageDigest.isEqual(
        given.getBytes(StandardCharsets.UTF_8), token.getBytes(StandardCharsets.UTF_8));
  }
}
