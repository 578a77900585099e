package dev.loopgauge.capture.javasound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.loopgauge.capture.AudioDevice;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.capture.SessionRequest;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;

class DevicesTest {
  private final FakeDevice microphone = new FakeDevice("Microphone", 0, 1, format -> true);
  private final FakeDevice stage = new FakeDevice("Stage card", 8, 8, format -> true);
  private final FakeDevice spare = new FakeDevice("Stage card spare", 2, 2, format -> true);
  private final Devices devices = new Devices(List.of(microphone, stage, spare));

  @Test
  void takesTheFirstThatHasTheDirection() throws Exception {
    assertSame(microphone, devices.find(Optional.empty(), Direction.RETURN));
    assertSame(stage, devices.find(Optional.empty(), Direction.SEND));
  }

  @Test
  void takesAnExactNameBeforeALongerOne() throws Exception {
    assertSame(stage, devices.find(Optional.of("Stage card"), Direction.SEND));
  }

  @Test
  void takesTheOnlyNameThatStartsSo() throws Exception {
    assertSame(spare, devices.find(Optional.of("stage CARD s"), Direction.SEND));
  }

  @Test
  void refusesABeginningThatTwoShare() {
    CaptureException e = refused("stage", Direction.SEND);
    assertEquals(
        "2 names begin with \"stage\"; to play to there is: \"Stage card\", \"Stage card spare\".",
        e.getMessage());
  }

  @Test
  void saysWhatThereIsInsteadOfAnUnknownName() {
    CaptureException e = refused("Microphone", Direction.SEND);
    assertEquals(Kind.NO_SUCH_DEVICE, e.kind());
    assertEquals(
        "No device is called \"Microphone\"; to play to there is: \"Stage card\", \"Stage card"
            + " spare\".",
        e.getMessage());
  }

  @Test
  void saysWhatToInstallWhenThereIsNothing() {
    CaptureException e =
        assertThrows(
            CaptureException.class,
            () -> new Devices(List.of()).find(Optional.empty(), Direction.SEND));
    assertEquals(Kind.BACKEND_UNUSABLE, e.kind());
    assertEquals(Devices.NONE_HINT, e.hint());
  }

  @Test
  void showsChannelsAndRates() {
    assertEquals(
        new AudioDevice("Stage card", 8, 8, List.of(new SampleRate(48_000)), RateSource.ANY),
        devices.toShow().get(1));
  }

  @Test
  void listsADeviceToBeHadAloneWithoutAskingIt() throws Exception {
    FakeDevice card = new FakeDevice("Card [plughw:0,0]", 2, 2, format -> true).toBeHadAlone();
    Devices both = new Devices(List.of(card, stage));
    assertEquals(
        AudioDevice.uncounted("Card [plughw:0,0]", RateSource.DEVICE, false), both.toShow().get(0));
    assertSame(stage, both.find(Optional.empty(), Direction.SEND));
    assertSame(stage, both.find(Optional.of("stage"), Direction.SEND));
    assertEquals(Optional.empty(), both.alone(request(Optional.empty())));
    assertEquals(Optional.of("Card [plughw:0,0]"), both.alone(request(Optional.of("card"))));
    assertEquals(0, card.asked());
    assertEquals(
        Optional.of(new AudioDevice.Channels(2, 2)), both.counted("Card [plughw:0,0]").channels());
    assertSame(card, both.find(Optional.of("card"), Direction.SEND));
  }

  @Test
  void saysThatADeviceToBeHadAloneDoesNotOpen() {
    FakeDevice card = new FakeDevice("Card [plughw:0,0]", 0, 0, format -> true).toBeHadAlone();
    Devices one = new Devices(List.of(card));
    CaptureException uncounted =
        assertThrows(CaptureException.class, () -> one.counted("Card [plughw:0,0]"));
    assertEquals(Kind.BUSY, uncounted.kind());
    CaptureException unopened =
        assertThrows(CaptureException.class, () -> one.find(Optional.of("card"), Direction.SEND));
    assertEquals(
        "\"Card [plughw:0,0]\" doesn't open as a device to play to.", unopened.getMessage());
  }

  private static SessionRequest request(Optional<String> device) {
    return new SessionRequest(device, device, List.of(1), List.of(1), Optional.empty(), 0);
  }

  @Test
  void readsFixedChannelCountsFromFormats() {
    Stated stated = Stated.of(formats(2, 10, 18));
    assertEquals(18, stated.shown());
    assertEquals(List.of(10, 18), stated.countsFor(3));
    assertEquals(List.of(2, 10, 18), stated.countsFor(1));
  }

  @Test
  void opensASingleChannelOnlyWhereThereIsOne() {
    assertEquals(List.of(1), Stated.of(formats(1)).countsFor(1));
  }

  @Test
  void readsAnyChannelCountFromAConvertingLayer() {
    Stated stated = Stated.of(formats(AudioSystem.NOT_SPECIFIED, 1, 10_000));
    assertEquals(32, stated.shown());
    assertEquals(10_000, stated.most());
    assertEquals(List.of(40), stated.countsFor(40));
  }

  @Test
  void takesARateThatOneFormatNamesForTheDevicesOwn() {
    AudioFormat any = new AudioFormat(AudioSystem.NOT_SPECIFIED, 24, 2, true, false);
    AudioFormat named = new AudioFormat(44_100, 24, 2, true, false);
    Stated stated = Stated.of(List.of(named, any));
    assertEquals(RateSource.DEVICE, stated.source());
    assertEquals(List.of(new SampleRate(44_100)), stated.rates());
    assertEquals(RateSource.ANY, Stated.of(List.of(any)).source());
  }

  private CaptureException refused(String name, Direction direction) {
    return assertThrows(CaptureException.class, () -> devices.find(Optional.of(name), direction));
  }

  private static List<AudioFormat> formats(int... channels) {
    return IntStream.of(channels)
        .mapToObj(n -> new AudioFormat(AudioSystem.NOT_SPECIFIED, 16, n, true, false))
        .toList();
  }
}
