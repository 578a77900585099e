package dev.loopgauge.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.capture.file.WavFile;
import dev.loopgauge.estimate.DelayEstimator;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.result.Estimate;
import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.estimate.result.Polarity;
import dev.loopgauge.signal.Signal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Delays that sox, ffmpeg and a textbook filter make of real speech are read as they were made. The
 * words are those of Debian's alsa-utils.
 */
@NeedsTool({
  "sox",
  "ffmpeg",
  "/usr/share/sounds/alsa/Front_Center.wav",
  "/usr/lib/python3/dist-packages/scipy/__init__.py"
})
class DelaysMadeByOthersIT {
  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "Front_Center, 0",
    "Front_Left, 1",
    "Front_Right, 47",
    "Rear_Center, 723",
    "Rear_Left, 4800",
    "Rear_Right, 12345",
    "Side_Left, 20011",
    "Side_Right, 5"
  })
  void readsTheDelayThatSoxPads(String word, int samples) throws Exception {
    Path ret = folder.resolve("padded.wav");
    Tool.run("sox", word(word).toString(), ret.toString(), "pad", samples + "s");
    assertEquals(samples, measured(word(word), ret).delay().samples(), 0.001);
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 595, 9600})
  void readsTheDelayThatFfmpegMakes(int samples) throws Exception {
    Path ret = folder.resolve("delayed.wav");
    Tool.run(
        "ffmpeg",
        "-i",
        word("Front_Center").toString(),
        "-af",
        "adelay=" + samples + "S",
        "" + ret);
    assertEquals(samples, measured(word("Front_Center"), ret).delay().samples(), 0.001);
  }

  @Test
  void readsPolarityAndLevelThatSoxSets() throws Exception {
    Path ret = folder.resolve("inverted.wav");
    Tool.run("sox", word("Rear_Left").toString(), "" + ret, "vol", "-0.25", "pad", "100s");
    Measurement m = measured(word("Rear_Left"), ret);
    assertEquals(Polarity.INVERTED, m.polarity());
    assertEquals(-12.04, m.levelDb(), 0.01);
    assertEquals(100, m.delay().samples(), 0.01);
  }

  /** A symmetric filter of N taps delays by (N - 1) / 2 samples (derived). */
  @ParameterizedTest
  @ValueSource(ints = {7, 16, 31})
  void readsTheDelayOfLinearPhaseFilter(int taps) throws Exception {
    Measurement m = measured(filtered(taps));
    assertEquals((taps - 1) / 2.0, m.delay().samples(), 0.01);
  }

  /** What is left of the word lies below 350 Hz. */
  @Test
  void readsSpeechOfWhichOnlyTheBassIsLeft() throws Exception {
    Estimate estimate = new DelayEstimator(1).estimate(List.of(filtered(255)));
    Measurement m =
        assertInstanceOf(Estimate.Found.class, estimate, estimate::toString).measurement();
    assertEquals((255 - 1) / 2.0, m.delay().samples(), m.uncertaintySamples());
    assertTrue(m.uncertaintySamples() < 1.5, m::toString);
  }

  /** A word through a filter shaped like Hann's window. */
  private static Reading filtered(int taps) throws AudioFileException {
    Signal reference = samples(word("Front_Center"));
    double[] words = reference.toArray();
    double[] filtered = new double[words.length + taps];
    for (int tap = 0; tap < taps; tap++) {
      double gain = (1 - Math.cos(2 * Math.PI * (tap + 1) / (taps + 1))) / (taps + 1);
      for (int i = 0; i < words.length; i++) {
        filtered[i + tap] += gain * words[i];
      }
    }
    return new Reading(reference, Signal.of(reference.rate(), filtered));
  }

  /** Source: SciPy's correlate, an independent implementation; it reads whole samples only. */
  @Test
  void readsTheLagThatScipyReads() throws Exception {
    Path ret = folder.resolve("noisy.wav");
    Tool.run("sox", "-R", word("Side_Right").toString(), "" + ret, "vol", "0.3", "pad", "1117s");
    String script =
        "import sys,numpy as n,scipy.signal as s,scipy.io.wavfile as w;"
            + "x=w.read(sys.argv[1])[1].astype(float);y=w.read(sys.argv[2])[1].astype(float);"
            + "print(int(n.argmax(abs(s.correlate(y,x,method='fft'))))-len(x)+1)";
    byte[] lag =
        Tool.run(
            "/usr/bin/python3", "-W", "ignore", "-c", script, "" + word("Side_Right"), "" + ret);
    assertEquals(
        Integer.parseInt(new String(lag, StandardCharsets.UTF_8).strip()),
        measured(word("Side_Right"), ret).delay().samples(),
        0.01);
  }

  private static Path word(String name) {
    return Path.of("/usr/share/sounds/alsa", name + ".wav");
  }

  private static Signal samples(Path file) throws AudioFileException {
    try (WavFile wav = WavFile.open(file)) {
      return wav.channel(1);
    }
  }

  private static Measurement measured(Path reference, Path ret) throws AudioFileException {
    return measured(new Reading(samples(reference), samples(ret)));
  }

  private static Measurement measured(Reading reading) {
    Estimate estimate = new DelayEstimator(1).estimate(List.of(reading));
    return assertInstanceOf(Estimate.Found.class, estimate, estimate::toString).measurement();
  }
}
