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
    return alike(reference, at) > SAME_BAND;
  }

  /** Whether a reference sounds in both halves, and at frequencies of its own in each. */
  public static boolean isSweep(Samples reference) {
    return alike(reference, reference.length() / 2) <= SAME_BAND;
  }

  /** How alike the spectra before and after a sample are, 0 to 1; not a number beside silence. */
  private static double alike(Samples reference, int at) {
    int length = reference.length();
    RealFft fft = new RealFft(RealFft.lengthFor(length));
    double[] before = new double[fft.length()];
    double[] after = new double[fft.length()];
    reference.copyTo(0, before, 0, at);
    reference.copyTo(at, after, at, length - at);
    fft.forward(before);
    fft.forward(after);
    double product = 0;
    double one = 0;
    double other = 0;
    for (int k = 1; k < fft.length() / 2; k++) {
      one += Packed.power(before, k);
      other += Packed.power(after, k);
      product += Math.sqrt(Packed.power(before, k) * Packed.power(after, k));
    }
    return product / Math.sqrt(one * other);
  }
}
