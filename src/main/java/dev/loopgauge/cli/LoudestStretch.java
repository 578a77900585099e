package dev.loopgauge.cli;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.capture.file.WavFile;

/** Finds where a long recording has most to tell: its loudest stretch. */
final class LoudestStretch {
  private LoudestStretch() {}

  /**
   * The frame at which the loudest stretch starts, to the second.
   *
   * @param file the recording
   * @param channel the channel to look at, counted from 1
   * @param frames how many of the file's frames to look at
   * @param stretch how many frames the stretch has, at most {@code frames}
   * @throws AudioFileException when the file has no such channel or can't be read
   */
  static long start(WavFile file, int channel, long frames, int stretch) throws AudioFileException {
    if (stretch == frames) {
      return 0;
    }
    int second = file.rate().hertz();
    double[] energies = new double[Math.toIntExact(frames / second)];
    for (int i = 0; i < energies.length; i++) {
      energies[i] = file.channel(channel, (long) i * second, second).energy();
    }
    return (long) second * loudest(energies, stretch / second);
  }

  private static int loudest(double[] energies, int length) {
    int best = 0;
    double sum = 0;
    double most = 0;
    for (int end = 0; end < energies.length; end++) {
      sum += energies[end] - (end >= length ? energies[end - length] : 0);
      if (end >= length - 1 && sum > most) {
        most = sum;
        best = end - length + 1;
      }
    }
    return best;
  }
}
