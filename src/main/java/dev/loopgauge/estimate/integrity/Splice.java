package dev.loopgauge.estimate.integrity;

import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.Packed;
import dev.loopgauge.estimate.spectrum.RealFft;
import dev.loopgauge.signal.Samples;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where a return splices: sound before and after it came by different delays, because a block was
 * lost or repeated in between.
 *
 * @param at where it is, in samples from the start of the capture
 * @param later by how many samples the return is later after it; empty where that can't be told
 */
public record Splice(int at, OptionalDouble later) {
  /** How alike the spectra before and after are where no frequency comes once only. */
  private static final double SAME_BAND = 0.3;

  private static final int PIECES = 8;
  private static final int LONGEST_PIECE = 1 << 12;

  /** Longer readings than this are not looked at, in seconds. */
  private static final double LONGEST_SECONDS = 30;

  /** What was lost at it; empty where sound was put in, or where that can't be told. */
  public Optional<LostSound.Gap> lost() {
    return later.isPresent() && later.getAsDouble() <= -1
        ? Optional.of(new LostSound.Gap(at, (int) Math.rint(-later.getAsDouble())))
        : Optional.empty();
  }

  /** Whether a reading is short enough to be looked at. */
  public static boolean isShort(Reading reading) {
    return reading.reference().length() <= LONGEST_SECONDS * reading.rate().hertz();
  }

  /** Whether one filter can be asked whether it explains both sides of a sample of a reference. */
  public static boolean asksFor(Reading reading, int at) {
    return isShort(reading) && sameBand(reading.reference(), at);
  }

  /** Whether what a reference holds before and after a sample of it is of the same frequencies. */
  public static boolean sameBand(Samples reference, int at) {
    int length = reference.length();
    RealFft fft = new RealFft(RealFft.lengthFor(length));
    double[] before = new double[fft.length() / 2];
    double[] after = new double[fft.length() / 2];
    addPowers(reference, 0, at, fft, before);
    addPowers(reference, at, length - at, fft, after);
    return alike(before, after) > SAME_BAND;
  }

  /** Whether a reference sounds in both halves, and at frequencies of its own in each. */
  public static boolean isSweep(Samples reference) {
    int half = reference.length() / 2;
    int piece = Math.max(2, Math.min(LONGEST_PIECE, half / PIECES));
    RealFft fft = new RealFft(Integer.highestOneBit(piece));
    double[] before = new double[fft.length() / 2];
    double[] after = new double[fft.length() / 2];
    for (int from = 0; from + fft.length() <= half; from += fft.length()) {
      addPowers(reference, from, fft.length(), fft, before);
      addPowers(reference, half + from, fft.length(), fft, after);
    }
    return alike(before, after) <= SAME_BAND;
  }

  private static void addPowers(
      Samples reference, int from, int length, RealFft fft, double[] powers) {
    double[] packed = new double[fft.length()];
    reference.copyTo(from, packed, 0, length);
    fft.forward(packed);
    for (int k = 1; k < powers.length; k++) {
      powers[k] += Packed.power(packed, k);
    }
  }

  /** How alike two spectra are, 0 to 1, from their powers; not a number where one is silent. */
  private static double alike(double[] one, double[] other) {
    double product = 0;
    double ofOne = 0;
    double ofOther = 0;
    for (int k = 1; k < one.length; k++) {
      ofOne += one[k];
      ofOther += other[k];
      product += Math.sqrt(one[k] * other[k]);
    }
    return product / Math.sqrt(ofOne * ofOther);
  }
}
