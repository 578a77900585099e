package dev.loopgauge.cli;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.capture.file.WavEncoding;
import dev.loopgauge.capture.file.WavWriter;
import dev.loopgauge.signal.PlayedStimulus;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Signal;
import dev.loopgauge.signal.StimulusKind;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;

/** Recordings made for a test: a sweep, late, in a little noise. */
public final class Recorded {
  public static final SampleRate RATE = new SampleRate(48_000);

  private static final int LENGTH = 72_000;
  private static final double NOISE = 1e-4;

  private Recorded() {}

  /** A sweep that starts after {@code delay} samples, times {@code gain}. */
  public static Signal sweep(int delay, double gain, long seed) {
    Signal sweep = new PlayedStimulus(StimulusKind.SWEEP, 1, -20).render(RATE);
    Random random = new Random(seed);
    double[] samples = new double[LENGTH];
    for (int i = 0; i < samples.length; i++) {
      int at = i - delay;
      double sound = at >= 0 && at < sweep.length() ? sweep.at(at) : 0;
      samples[i] = gain * sound + NOISE * random.nextGaussian();
    }
    return Signal.of(RATE, samples);
  }

  /** The same samples, as if they had been recorded at another rate. */
  public static Signal at(SampleRate rate, Signal signal) {
    return Signal.of(rate, signal.toArray());
  }

  public static Path write(Path file, Signal... channels) throws AudioFileException {
    WavWriter.write(file, List.of(channels), WavEncoding.PCM_24);
    return file;
  }
}
