package dev.loopgauge.capture.simulated;

/**
 * A sound that is read faster or slower than it was meant, from a frame on.
 *
 * @param sound what is read
 * @param since the frame that is still in time
 * @param pace how many of its frames pass with each one
 */
record PacedSound(Sound sound, long since, double pace) implements Sound {
  @Override
  public double[] read(long from, int length) {
    double first = since + (from - since) * pace;
    long start = (long) Math.floor(first) - Interpolation.REACH;
    int needed = (int) Math.ceil(length * pace) + 2 * Interpolation.REACH;
    double[] heard = sound.read(start, needed);
    double[] paced = new double[length];
    for (int i = 0; i < length; i++) {
      paced[i] = Interpolation.at(heard, first - start + i * pace);
    }
    return paced;
  }
}
