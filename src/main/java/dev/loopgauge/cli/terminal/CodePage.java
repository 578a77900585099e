package dev.loopgauge.cli.terminal;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CharsetEncoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Writes UTF-8 in the code page of a Windows console. What that page lacks is written in plain
 * letters that say the same. Files and pipes get UTF-8 as on every system.
 */
final class CodePage extends FilterOutputStream {
  /** What documents and screens use beside plain letters, and how it is written without. */
  private static final Map<Character, String> PLAIN =
      Map.of(
          '\u00b1', "+-",
          '\u00b7', "-",
          '\u00b0', "deg ",
          '\u2026', "...",
          '\u2192', "->",
          '\u2013', "-",
          '\u2014', "-",
          '\u2019', "'");

  private final Charset charset;
  private final CharsetEncoder encoder;
  private final CharsetDecoder utf8 =
      StandardCharsets.UTF_8
          .newDecoder()
          .onMalformedInput(CodingErrorAction.REPLACE)
          .onUnmappableCharacter(CodingErrorAction.REPLACE);

  /** The start of a letter whose other bytes are still to come; at most three. */
  private byte[] begun = {};

  /** A stream that takes UTF-8 and hands on a code page. */
  CodePage(OutputStream out, Charset charset) {
    super(out);
    this.charset = charset;
    this.encoder = charset.newEncoder();
  }

  /**
   * The code page to write in, where there is one.
   *
   * @param system the operating system as Java calls it
   * @param terminal whether output goes to a console
   * @param named what Java says of the console's encoding, null where it says nothing
   */
  static Optional<Charset> of(String system, boolean terminal, String named) {
    boolean windows = system.toLowerCase(Locale.ROOT).startsWith("windows");
    if (!windows || !terminal || named == null || !Charset.isSupported(named)) {
      return Optional.empty();
    }
    Charset charset = Charset.forName(named);
    return charset.equals(StandardCharsets.UTF_8) ? Optional.empty() : Optional.of(charset);
  }

  @Override
  public void write(int octet) throws IOException {
    write(new byte[] {(byte) octet}, 0, 1);
  }

  @Override
  public void write(byte[] octets, int from, int length) throws IOException {
    ByteBuffer in = ByteBuffer.allocate(begun.length + length).put(begun);
    in.put(octets, from, length).flip();
    CharBuffer letters = CharBuffer.allocate(in.remaining() + 1);
    utf8.reset().decode(in, letters, false);
    begun = new byte[in.remaining()];
    in.get(begun);
    out.write(printable(letters.flip().toString()).getBytes(charset));
  }

  private String printable(String text) {
    if (encoder.canEncode(text)) {
      return text;
    }
    StringBuilder printable = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char letter = text.charAt(i);
      printable.append(encoder.canEncode(letter) ? String.valueOf(letter) : plain(letter));
    }
    return printable.toString();
  }

  /** A letter without what is above or below it, else a question mark. */
  private String plain(char letter) {
    String bare =
        Normalizer.normalize(String.valueOf(letter), Normalizer.Form.NFKD)
            .replaceAll("\\p{M}+", "");
    return PLAIN.getOrDefault(letter, !bare.isEmpty() && encoder.canEncode(bare) ? bare : "?");
  }
}
