package dev.loopgauge.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.capture.file.WavFile;
import dev.loopgauge.estimate.ArrivalChoice;
import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.StimulusKind;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Real speech through codecs and a real street is read as it is. The words are those of Debian's
 * alsa-utils, the responses those of its jconvolver-config-files.
 */
@NeedsTool({
  "ffmpeg",
  "sox",
  "espeak-ng",
  "/usr/share/sounds/alsa/Front_Center.wav",
  "/usr/share/jconvolver/config-files/demo-reverbs/street2-R.wav"
})
class RealSoundsIT {
  private static final Path WORDS = Path.of("/usr/share/sounds/alsa");
  private static final Path STREET =
      Path.of("/usr/share/jconvolver/config-files/demo-reverbs/street2-R.wav");

  /** LAME's encoder delay, its technical FAQ: 576 samples. */
  private static final int LAME_ENCODER = 576;

  /** Any MP3 decoder's delay, the same FAQ: 528 samples and 1. */
  private static final int MP3_DECODER = 529;

  /**
   * The priming of ffmpeg's own AAC encoder: one frame, the least that QuickTime File Format,
   * "Background: AAC encoding", names.
   */
  private static final int AAC_PRIMING = 1024;

  @TempDir Path folder;

  /** Without the Xing header no decoder knows of the delay, so that none is taken off. */
  @ParameterizedTest
  @ValueSource(strings = {"Front_Center", "Front_Left", "Rear_Right", "Side_Left", "Noise"})
  void readsThePublishedDelayOfMp3(String word) throws Exception {
    Path coded = folder.resolve("word.mp3");
    ffmpeg(WORDS.resolve(word + ".wav"), coded, "libmp3lame", "-write_xing", "0");
    assertDelay(LAME_ENCODER + MP3_DECODER, WORDS.resolve(word + ".wav"), decoded(coded));
  }

  /** An ADTS stream has no edit list that would take the priming off. */
  @ParameterizedTest
  @ValueSource(strings = {"Front_Center", "Front_Left", "Rear_Right", "Side_Left", "Noise"})
  void readsThePublishedDelayOfAac(String word) throws Exception {
    Path coded = folder.resolve("word.aac");
    ffmpeg(WORDS.resolve(word + ".wav"), coded, "aac");
    assertDelay(AAC_PRIMING, WORDS.resolve(word + ".wav"), decoded(coded));
  }

  @Test
  void readsTheDelayOfSpokenTextThroughMp3() throws Exception {
    Path spoken = folder.resolve("spoken.wav");
    Path reference = folder.resolve("spoken-48.wav");
    Tool.run("espeak-ng", "-w", "" + spoken, "Doors open in five minutes. Stand by, please.");
    Tool.run("sox", "-R", "" + spoken, "-r", "48000", "" + reference);
    Path coded = folder.resolve("spoken.mp3");
    ffmpeg(reference, coded, "libmp3lame", "-write_xing", "0");
    assertDelay(LAME_ENCODER + MP3_DECODER, reference, decoded(coded));
  }

  /**
   * One word in so diffuse a sound is little to hold on to: right as far as it says, or refused.
   */
  @ParameterizedTest
  @ValueSource(strings = {"Front_Center", "Rear_Left", "Noise"})
  void givesNoFalseNumberForOneWordInAStreet(String word) throws Exception {
    Estimate estimate = inTheStreet(samples(WORDS.resolve(word + ".wav")));
    if (estimate instanceof Estimate.Found found) {
      double within = Math.max(1, found.measurement().uncertaintySamples());
      double delay = found.measurement().delay().samples();
      assertEquals(directSound(), delay, within, estimate::toString);
    }
  }

  /** In so diffuse a sound a sweep is read right, or refused because of the room. */
  @Test
  void blamesTheRoomForASweepThatAStreetSmears() throws Exception {
    Estimate estimate = inTheStreet(StimulusKind.SWEEP.of(1).render(new SampleRate(48_000)));
    if (estimate instanceof Estimate.Found found) {
      assertEquals(directSound(), found.measurement().delay().samples(), 1, estimate::toString);
    } else {
      Finding why = estimate.findings().get(0);
      assertTrue(why.text().contains("a room smears the sound"), why::text);
    }
  }

  /** The strongest sample of the response. */
  private static int directSound() throws AudioFileException {
    double[] street = samples(STREET).toArray();
    int direct = 0;
    for (int i = 0; i < street.length; i++) {
      direct = Math.abs(street[i]) > Math.abs(street[direct]) ? i : direct;
    }
    return direct;
  }

  private static Estimate inTheStreet(Signal reference) throws AudioFileException {
    double[] street = samples(STREET).toArray();
    double[] dry = reference.toArray();
    double[] heard = new double[dry.length + street.length];
    for (int k = 0; k < street.length; k++) {
      for (int i = 0; i < dry.length; i++) {
        heard[i + k] += street[k] * dry[i];
      }
    }
    return new DelayEstimator(1, ArrivalChoice.STRONGEST)
        .estimate(reference, Signal.of(reference.rate(), heard));
  }

  private static void ffmpeg(Path from, Path to, String codec, String... more) throws Exception {
    List<String> command = new ArrayList<>(List.of("ffmpeg", "-i", "" + from));
    command.addAll(List.of("-c:a", codec, "-b:a", "192k"));
    command.addAll(List.of(more));
    command.add("" + to);
    Tool.run(command.toArray(String[]::new));
  }

  private Path decoded(Path coded) throws Exception {
    Path decoded = folder.resolve("decoded.wav");
    Tool.run("ffmpeg", "-i", "" + coded, "" + decoded);
    return decoded;
  }

  private static void assertDelay(int samples, Path reference, Path ret) throws Exception {
    Estimate estimate = new DelayEstimator(1).estimate(samples(reference), samples(ret));
    Measurement m =
        assertInstanceOf(Estimate.Found.class, estimate, estimate::toString).measurement();
    // One in twenty errs by more than U; none of these sounds by more than twice that.
    assertEquals(samples, m.delay().samples(), 2 * m.uncertaintySamples(), estimate::toString);
    assertTrue(m.uncertaintySamples() < 0.5, estimate::toString);
  }

  private static Signal samples(Path file) throws AudioFileException {
    try (WavFile wav = WavFile.open(file)) {
      return wav.channel(1);
    }
  }
}
