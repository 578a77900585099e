package dev.loopgauge.estimate.spectrum;

import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.jtransforms.fft.DoubleFFT_1D;
import org.visnow.jlargearrays.ConcurrencyUtils;

/**
 * The discrete Fourier transform of real signals of one fixed length, a power of two.
 *
 * <p>A spectrum is packed into as many doubles as the signal has samples: index 0 holds the real
 * part at 0, index 1 that at half the rate, and 2k and 2k+1 the real and imaginary part of bin k.
 * Forward is unscaled, inverse divides by the length. The library below steers itself by static
 * fields; they are touched here and nowhere else. Safe to share between threads.
 */
public final class RealFft {
  static {
    // One thread for each transform: the same bits each time, and cores are used channel by
    // channel.
    ConcurrencyUtils.setNumberOfThreads(1);
    warmUp(new DoubleFFT_1D(64), new double[64]);
  }

  private final DoubleFFT_1D transform;
  private final int length;
  private final Queue<double[]> rooms = new ConcurrentLinkedQueue<>();

  /**
   * A transform.
   *
   * @param length a power of two, at least 2
   */
  public RealFft(int length) {
    if (length < 2 || Integer.bitCount(length) != 1) {
      throw new IllegalArgumentException("a length must be a power of two, not " + length);
    }
    this.length = length;
    this.transform = new DoubleFFT_1D(length);
  }

  /**
   * The virtual machine compiles what is called often, and a long transform calls the library's
   * longest methods once. These are a hundredth of its work, and a process's first ones then take a
   * third of the time.
   */
  private static void warmUp(DoubleFFT_1D transform, double[] signal) {
    for (int i = 0; i < 250; i++) {
      transform.realForward(signal);
      transform.realInverse(signal, true);
    }
  }

  /** The least power of two that is at least {@code n}, and at least 2. */
  public static int lengthFor(int n) {
    return Math.max(2, Integer.highestOneBit(Math.max(n, 2) - 1) << 1);
  }

  /** How many samples a signal has. */
  public int length() {
    return length;
  }

  /** An array of one signal's length for a while, filled with what it was used for before. */
  double[] borrow() {
    double[] room = rooms.poll();
    return room == null ? new double[length] : room;
  }

  /** Takes a borrowed array back. */
  void giveBack(double[] room) {
    rooms.add(room);
  }

  /** Turns a signal into its packed spectrum, in place. */
  public void forward(double[] signal) {
    transform.realForward(signal);
  }

  /** Turns a packed spectrum back into its signal, in place. */
  public void inverse(double[] spectrum) {
    transform.realInverse(spectrum, true);
  }
}
