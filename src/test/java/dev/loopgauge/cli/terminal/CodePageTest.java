package dev.loopgauge.cli.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CodePageTest {
  private static String shown(String page, String text) {
    Charset charset = Charset.forName(page);
    ByteArrayOutputStream console = new ByteArrayOutputStream();
    new PrintStream(new CodePage(console, charset), true, StandardCharsets.UTF_8).print(text);
    return new String(console.toByteArray(), charset);
  }

  /** 850 is the console's page in western Europe, 437 in the USA, 932 in Japan (from memory). */
  @ParameterizedTest
  @CsvSource({
    "IBM850, Bühne: 7.74 ± 0.01 ms · 20 °C, Bühne: 7.74 ± 0.01 ms · 20 °C",
    "IBM437, Bühne: 7.74 ± 0.01 ms · 20 °C, Bühne: 7.74 ± 0.01 ms · 20 °C",
    "IBM850, a → b … Š, a -> b ... S",
    "windows-31j, Bühne: 7.74 ± 0.01 ms, Buhne: 7.74 ± 0.01 ms",
    "US-ASCII, Bühne: 7.74 ± 0.01 ms · 20 °C, Buhne: 7.74 +- 0.01 ms - 20 deg C",
    "US-ASCII, 日本, ??"
  })
  void writesPlainLettersWhereThePageHasNone(String page, String text, String shown) {
    assertEquals(shown, shown(page, text));
  }

  @Test
  void aLetterMayComeInPieces() throws IOException {
    ByteArrayOutputStream console = new ByteArrayOutputStream();
    CodePage page = new CodePage(console, Charset.forName("IBM850"));
    for (byte octet : "ü±→x".getBytes(StandardCharsets.UTF_8)) {
      page.write(octet);
    }
    assertEquals("ü±->x", console.toString(Charset.forName("IBM850")));
  }

  @ParameterizedTest
  @CsvSource({
    "Windows 11, true, cp850, IBM850",
    "Windows 11, true, UTF-8,",
    "Windows 11, true, no-such-page,",
    "Windows 11, true,,",
    "Windows 11, false, cp850,",
    "Linux, true, ISO-8859-1,",
    "Mac OS X, true, US-ASCII,"
  })
  void onlyAConsoleOfWindowsHasOne(String system, boolean terminal, String named, String page) {
    assertEquals(
        Optional.ofNullable(page), CodePage.of(system, terminal, named).map(Charset::name));
  }
}
