package dev.loopgauge.screen.web;

import io.nayuki.qrcodegen.QrCode;

/** An address as a QR code in characters, two rows in each line, for a terminal that is dark. */
final class QrText {
  /** ISO/IEC 18004 asks for four modules around it. */
  private static final int QUIET = 4;

  private QrText() {}

  /** The lines, each ended by a newline. */
  static String of(String address) {
    QrCode code = QrCode.encodeText(address, QrCode.Ecc.LOW);
    StringBuilder text = new StringBuilder();
    for (int y = -QUIET; y < code.size + QUIET; y += 2) {
      for (int x = -QUIET; x < code.size + QUIET; x++) {
        text.append(character(!code.getModule(x, y), !code.getModule(x, y + 1)));
      }
      text.append('\n');
    }
    return text.toString();
  }

  private static char character(boolean upper, boolean lower) {
    if (upper) {
      return lower ? '\u2588' : '\u2580';
    }
    return lower ? '\u2584' : ' ';
  }
}
