package dev.loopgauge.chain;

import java.util.Locale;
import java.util.Optional;

/**
 * Who plays or sings on a path, and the delays that such players found good and fair: Lester and
 * Boley, "The Effects of Latency on Live Sound Monitoring", AES 123rd Convention, 2007, paper 7198,
 * Table 1 (reported).
 */
public enum Instrument {
  /** A singer or speaker. */
  VOICE(1, 6.5, 10, 26),
  /** A saxophone. */
  SAX(0, 3, 1.5, 10),
  /** A guitar. */
  GUITAR(4.5, 14.5, 6.5, 16),
  /** A drum kit. */
  DRUMS(8, 24.5, 9, 25),
  /** An electric bass. */
  BASS(4.5, 25.5, 8, 30),
  /** A keyboard. */
  KEYBOARD(27, 43, 22, 40.5);

  private final double inEarGoodMs;
  private final double inEarFairMs;
  private final double wedgeGoodMs;
  private final double wedgeFairMs;

  Instrument(double inEarGoodMs, double inEarFairMs, double wedgeGoodMs, double wedgeFairMs) {
    this.inEarGoodMs = inEarGoodMs;
    this.inEarFairMs = inEarFairMs;
    this.wedgeGoodMs = wedgeGoodMs;
    this.wedgeFairMs = wedgeFairMs;
  }

  /** The name in chain files. */
  public String label() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** What its players found; only in-ear monitors and wedges were asked about. */
  public Optional<Guidance> guidance(Listener listener) {
    return switch (listener) {
      case IN_EAR -> Optional.of(new Guidance(inEarGoodMs, inEarFairMs));
      case WEDGE -> Optional.of(new Guidance(wedgeGoodMs, wedgeFairMs));
      case HOUSE, STREAM -> Optional.empty();
    };
  }
}
