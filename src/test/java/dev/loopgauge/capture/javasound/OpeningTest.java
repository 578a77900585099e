package dev.loopgauge.capture.javasound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.capture.alsa.OwnFormats;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class OpeningTest {
  private static final Optional<SampleRate> ANY_RATE = Optional.empty();

  @Test
  void prefersFortyEightKilohertzAndTwentyFourBits() throws Exception {
    FakeDevice card = new FakeDevice("Stage card", 8, 8, format -> true);
    OpenLines lines = open(card, request(ANY_RATE, 0, List.of(3), List.of(1, 5)));
    assertEquals(new SampleRate(48_000), lines.rate());
    assertEquals(new LineFormat(lines.rate(), 24, 5, 16_384), card.opened.get(0));
    assertEquals(new LineFormat(lines.rate(), 24, 3, 16_384), card.opened.get(1));
  }

  @Test
  void opensTwoChannelsForTheFirstSinceOneMayBeSpread() throws Exception {
    FakeDevice card = new FakeDevice("Stage card", 8, 8, format -> true);
    open(card, request(ANY_RATE, 0, List.of(1), List.of(1)));
    assertEquals(List.of(2, 2), card.opened.stream().map(LineFormat::channels).toList());
  }

  @Test
  void fallsBackToSixteenBitsAndAnotherBuffer() throws Exception {
    FakeDevice card =
        new FakeDevice("Old card", 2, 2, f -> f.bits() == 16 && f.bufferFrames() == 8_192);
    open(card, request(ANY_RATE, 0, List.of(1), List.of(2)));
    assertEquals(16, card.opened.get(0).bits());
    assertEquals(8_192, card.opened.get(0).bufferFrames());
  }

  @Test
  void takesTheRateThatBothRunAt() throws Exception {
    FakeDevice card = new FakeDevice("Player", 2, 2, f -> f.rate().hertz() == 96_000);
    OpenLines lines = open(card, request(ANY_RATE, 0, List.of(1), List.of(1)));
    assertEquals(new SampleRate(96_000), lines.rate());
  }

  @Test
  void saysHowManyChannelsThereAre() {
    FakeDevice card = new FakeDevice("Stage card", 2, 4, format -> true);
    CaptureException sends = refused(card, request(ANY_RATE, 0, List.of(3), List.of(1)));
    assertEquals(Kind.TOO_FEW_CHANNELS, sends.kind());
    assertEquals("\"Stage card\" has 2 sends; send 3 was asked for.", sends.getMessage());
    CaptureException returns = refused(card, request(ANY_RATE, 0, List.of(2), List.of(5)));
    assertEquals("\"Stage card\" has 4 returns; return 5 was asked for.", returns.getMessage());
  }

  @Test
  void saysAtWhichRatesItOpens() {
    FakeDevice card = new FakeDevice("Stage card", 2, 2, f -> f.rate().hertz() <= 48_000);
    CaptureException e =
        refused(card, request(Optional.of(new SampleRate(96_000)), 0, List.of(1), List.of(1)));
    assertEquals(Kind.UNSUPPORTED_FORMAT, e.kind());
    assertEquals(
        "\"Stage card\" doesn't run at 96000 Hz; it opens at 48000, 44100 Hz.", e.getMessage());
  }

  @Test
  void opensAtTheDevicesOwnRate() throws Exception {
    FakeDevice card = card(2, RateSource.DEVICE, 44_100);
    OpenLines lines = open(card, request(ANY_RATE, 0, List.of(1), List.of(2)));
    assertEquals(new SampleRate(44_100), lines.rate());
    assertEquals(RateSource.DEVICE, lines.source());
  }

  @Test
  void opensNothingAtARateThatWouldBeConverted() {
    FakeDevice card = card(4, RateSource.SERVER, 48_000, 96_000);
    CaptureException e =
        refused(card, request(Optional.of(new SampleRate(32_000)), 0, List.of(4), List.of(4)));
    assertEquals(Kind.UNSUPPORTED_FORMAT, e.kind());
    assertEquals(
        "\"Stage card\" doesn't run at 32000 Hz; it runs at 48000, 96000 Hz.", e.getMessage());
    assertEquals(List.of(), card.opened);
  }

  @Test
  void saysThatTheOneChannelWouldBeDoubled() {
    FakeDevice card = card(1, RateSource.DEVICE, 48_000);
    CaptureException e = refused(card, request(ANY_RATE, 0, List.of(1, 2), List.of(1, 2)));
    assertEquals(Kind.TOO_FEW_CHANNELS, e.kind());
    assertEquals("\"Stage card\" has 1 send; send 2 was asked for.", e.getMessage());
    assertEquals(List.of(), card.opened);
  }

  @Test
  void saysThatTwoDevicesShareNoRate() {
    FakeDevice player = card(2, RateSource.DEVICE, 48_000);
    FakeDevice microphone =
        new FakeDevice("Microphone", 0, 0, format -> true)
            .running(
                Stated.own(
                    new OwnFormats(1, 2, List.of(new SampleRate(44_100)), RateSource.DEVICE)));
    SessionRequest request =
        new SessionRequest(
            Optional.of("Stage card"),
            Optional.of("Microphone"),
            List.of(1),
            List.of(1),
            ANY_RATE,
            0);
    CaptureException e =
        assertThrows(
            CaptureException.class,
            () -> Opening.open(new Devices(List.of(player, microphone)), request));
    assertEquals(Kind.UNSUPPORTED_FORMAT, e.kind());
    assertTrue(e.getMessage().contains("\"Microphone\" runs at 44100 Hz"), e.getMessage());
  }

  @Test
  void refusesABufferThatTheDeviceReplaces() {
    FakeDevice card = new FakeDevice("Stage card", 2, 2, format -> true).takingBuffer(8_192);
    CaptureException e = refused(card, request(ANY_RATE, 6_000, List.of(1), List.of(1)));
    assertEquals(Kind.UNSUPPORTED_FORMAT, e.kind());
    assertTrue(e.getMessage().contains("buffer of 6000 samples"), e.getMessage());
  }

  @Test
  void saysThatTheBufferIsToBlame() {
    FakeDevice card = new FakeDevice("Stage card", 2, 2, f -> f.bufferFrames() != 6_000);
    CaptureException e = refused(card, request(ANY_RATE, 6_000, List.of(1), List.of(1)));
    assertEquals(Kind.UNSUPPORTED_FORMAT, e.kind());
    assertTrue(e.getMessage().contains("buffer of 6000 samples"), e.getMessage());
  }

  @Test
  void callsADeviceThatOpensNowhereBusy() {
    FakeDevice card = new FakeDevice("Stage card", 2, 2, format -> false);
    CaptureException e = refused(card, request(ANY_RATE, 0, List.of(1), List.of(1)));
    assertEquals(Kind.BUSY, e.kind());
    assertTrue(e.getMessage().contains("Stage card"), e.getMessage());
  }

  @Test
  void saysThatTwoDevicesDoNotGoTogether() {
    FakeDevice microphone = new FakeDevice("Microphone", 0, 1, f -> f.rate().hertz() == 44_100);
    FakeDevice player = new FakeDevice("Player", 2, 0, f -> f.rate().hertz() == 48_000);
    CaptureException e =
        assertThrows(
            CaptureException.class,
            () ->
                Opening.open(
                    new Devices(List.of(microphone, player)),
                    request(ANY_RATE, 0, List.of(1), List.of(1))));
    assertEquals(
        "\"Player\" and \"Microphone\" open one by one, but not together at one rate.",
        e.getMessage());
  }

  private static FakeDevice card(int channels, RateSource source, int... rates) {
    return new FakeDevice("Stage card", 0, 0, format -> true)
        .running(
            Stated.own(
                new OwnFormats(
                    1, channels, IntStream.of(rates).mapToObj(SampleRate::new).toList(), source)));
  }

  private static OpenLines open(FakeDevice card, SessionRequest request) throws CaptureException {
    return Opening.open(new Devices(List.of(card)), request);
  }

  private static CaptureException refused(FakeDevice card, SessionRequest request) {
    return assertThrows(CaptureException.class, () -> open(card, request));
  }

  private static SessionRequest request(
      Optional<SampleRate> rate, int buffer, List<Integer> sends, List<Integer> returns) {
    return new SessionRequest(Optional.empty(), Optional.empty(), sends, returns, rate, buffer);
  }
}
